package document

import (
	"bytes"
	"testing"

	"understructure/app/record"
)

// Every number about supports can be set, is written and read back, undone, and cleared again.
func TestNumbersAboutSupports(t *testing.T) {
	fields := append(SkirtSupportFields(dress()), SleeveSupportFields(dress())...)
	for i, f := range fields {
		d := newDesk(t, echo)
		d.Start("demo", dress())
		v := f.Max
		d.Set(f, &v)
		d.Settle()
		if got := f.Get(d.Record()); got == nil || *got != v {
			t.Errorf("%s is %v after it was set to %g", f.Path, got, v)
		}
		var b bytes.Buffer
		if err := record.EncodeDraft(&b, d.Record()); err != nil {
			t.Errorf("%s: %v", f.Path, err)
		}
		again, err := record.DecodeDraft(&b)
		if got := f.Get(again); err != nil || got == nil || *got != v {
			t.Errorf("%s is read back as %v, %v", f.Path, got, err)
		}
		for k, other := range fields {
			if k != i && other.Get(d.Record()) != nil {
				t.Errorf("%s was set with %s", other.Path, f.Path)
			}
		}
		d.Set(f, nil)
		d.Settle()
		if f.Get(d.Record()) != nil {
			t.Errorf("%s cannot be cleared", f.Path)
		}
		d.Undo()
		d.Undo()
		if d.Dirty() {
			t.Errorf("%s: everything is undone, yet something is unsaved", f.Path)
		}
	}
}

func TestAPadOfNothingIsNone(t *testing.T) {
	d := newDesk(t, echo)
	r := dress()
	r.Mount.Pads.Bust.Asked = true
	d.Start("demo", r)
	bust := SleeveSupportFields(r)[2]
	if bust.Path != "mount.pads.bust" || bust.Get(r) != nil {
		t.Fatalf("%s is %v", bust.Path, bust.Get(r))
	}
	d.Set(bust, mm(0))
	if pad := d.Record().Mount.Pads.Bust; pad != (record.Pad{}) {
		t.Errorf("a pad of 0 is %+v", pad)
	}
}

func TestSteelsAreCounted(t *testing.T) {
	steels := SkirtSupportFields(dress())[2]
	if steels.Path != "mount.skirt.steels" || steels.Kind.Word("cm") != "" || steels.Kind.Format(5, "in") != "5" {
		t.Fatalf("%+v", steels)
	}
	if v, err := steels.Read("6", "cm"); err != nil || *v != 6 {
		t.Errorf("6 is read as %v, %v", v, err)
	}
	for _, text := range []string{"5.5", "0", "41", "many"} {
		if v, err := steels.Read(text, "cm"); err == nil {
			t.Errorf("%s is read as %v", text, *v)
		}
	}
}
