package record

import "testing"

// A rule that measures 99.6 mm must be drawn 100/99.6 times as long, and one of 100.2 mm 100/100.2 times.
func TestAPrinterIsCorrectedByWhatItsRulesMeasure(t *testing.T) {
	m := decode(t, body(`"mount": {"printer": {"x": 99.6, "y": 100.2}}`)).Mount
	s, _ := m.Stocked("")
	if s.Paper.ScaleX != 100/99.6 || s.Paper.ScaleY != 100/100.2 || s.Paper.Name != "A4" {
		t.Errorf("%+v", s.Paper)
	}
	m.Printer.Y = nil
	if s, _ = m.Stocked(""); s.Paper.ScaleY != 0 {
		t.Errorf("what was not measured is corrected: %+v", s.Paper)
	}
}
