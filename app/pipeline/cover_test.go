package pipeline_test

import (
	"context"
	"testing"

	"understructure/app/pipeline"
	"understructure/app/record"
)

// The demonstrations' covers: nearly every panel lies flat within the 2.8 % that jersey gives, and the
// few that stay above, at the corner of shoulder and armscye, not by much.
func TestDemoCovers(t *testing.T) {
	for name, most := range map[string]int{"demo-1872-bodice": 24, "demo-boy-1895": 26, "demo-three-values": 24} {
		r, err := record.Load("../../assets/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		p, err := pipeline.Run(context.Background(), r, nil)
		if err != nil {
			t.Fatal(err)
		}
		panels, above, worst, last := 0, 0, 0.0, 0
		for _, q := range p.Pieces {
			if q.Material != "cover" {
				if q.ID[0] == 'L' {
					last = max(last, q.Layer)
				}
				continue
			}
			panels++
			worst = max(worst, q.Strain)
			if q.Strain > 0.028 {
				above++
			}
			if q.Layer != last+1 {
				t.Errorf("%s: %s is layer %d over %d layers of wadding", name, q.ID, q.Layer, last)
			}
		}
		v := p.Volumes["cover"]
		t.Logf("%s: %d panels, greatest strain %.2f %%, %d above 2.8 %%, volume %+.2f %%", name, panels, 100*worst, above, 100*(v.Pieces/v.Space-1))
		if panels < 8 || panels > most || worst > 0.036 || above > panels*2/5 {
			t.Errorf("%s: %d panels, greatest strain %.4f, %d above 0.028", name, panels, worst, above)
		}
	}
}

// Without a cover in stock there is none.
func TestNoCover(t *testing.T) {
	r, err := record.Load("../../assets/demo-1872-bodice.json")
	if err != nil {
		t.Fatal(err)
	}
	none := 0.0
	r.Mount.Cover = &none
	p, err := pipeline.Run(context.Background(), r, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range p.Pieces {
		if q.ID[0] == 'C' {
			t.Errorf("%s is cut", q.ID)
		}
	}
	if _, ok := p.Volumes["cover"]; ok {
		t.Error("a cover's volume is given")
	}
}
