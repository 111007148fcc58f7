package pipeline

import (
	"context"
	"testing"
	"time"

	"understructure/app/record"
)

func TestDemosRun(t *testing.T) {
	for _, name := range []string{"demo-1872-bodice", "demo-boy-1895", "demo-three-values"} {
		r, err := record.Load("../../assets/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		start := time.Now()
		p, err := Run(context.Background(), r, nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		t.Logf("%s: %d pieces %v", name, len(p.Pieces), time.Since(start))
		for _, l := range p.Levels {
			f := 0.0
			if l.FormGirth != nil {
				f = *l.FormGirth
			}
			t.Logf("%-13s %7.1f garment %7.1f ease %5.1f target %7.1f form %7.1f built %7.1f clear %6.1f chance %.3f", l.Name, l.Height, *l.GarmentGirth, l.Ease, *l.TargetGirth, f, *l.BuiltGirth, *l.Clearance, *l.StrainChance)
		}
		for _, w := range p.Warnings {
			t.Logf("%s %s: %s", w.Code, w.Level, w.Message)
		}
		for i, h := range p.Surface.Heights {
			tg, b := p.Surface.Target[i].Tape(), p.Surface.Built[i].Tape()
			if b > tg+0.01 || b < tg-5 {
				t.Logf("at %.1f built %.2f target %.2f: %+.2f", h, b, tg, b-tg)
			}
		}
		t.Logf("%+v %+v %+v", p.Volumes, p.Standing, p.Materials)
		worst := 0.0
		for _, q := range p.Pieces {
			worst = max(worst, q.Strain)
		}
		t.Logf("worst strain %.3f, layers %d", worst, len(p.Layers))
	}
}
