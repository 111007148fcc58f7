package pipeline

import (
	"context"
	"encoding/json"
	"math"
	"reflect"
	"testing"

	"understructure/app/record"
	"understructure/assets"
	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// demo is one of the program's own records.
func demo(t testing.TB, name string) record.Record {
	t.Helper()
	f, err := assets.Demos.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, err := record.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// enclosed is what the outlines enclose, trapezoids between those that are neighbours, mm³.
func enclosed(heights []float64, outlines []plane.Ring) float64 {
	v := 0.0
	for i := 1; i < len(heights); i++ {
		if outlines[i-1] != nil && outlines[i] != nil {
			v += (heights[i] - heights[i-1]) * (outlines[i-1].Area() + outlines[i].Area()) / 2
		}
	}
	return v
}

func TestStagesBuildUp(t *testing.T) {
	for _, name := range []string{"demo-1872-bodice.json", "demo-boy-1895.json", "demo-three-values.json"} {
		t.Run(name, func(t *testing.T) {
			r := demo(t, name)
			p, err := Run(context.Background(), r, nil)
			if err != nil {
				t.Fatal(err)
			}
			steps := map[string]int{}
			before := 0.0
			for k, s := range p.Stages {
				if steps[s.Kind]++; s.Number != steps[s.Kind] {
					t.Errorf("stage %d is %s %d, want %d", k, s.Kind, s.Number, steps[s.Kind])
				}
				if len(s.Outlines) != len(p.Surface.Heights) {
					t.Fatalf("stage %d has %d outlines, want %d", k, len(s.Outlines), len(p.Surface.Heights))
				}
				v := enclosed(p.Surface.Heights, p.After(k))
				if v < before {
					t.Errorf("%s takes %.0f mm³ away", s.Name, before-v)
				}
				before = v
			}
			want := map[string]int{plan.WaddingStage: 0, plan.CoverStage: 1}
			if p.Build == "slices" {
				want[plan.SliceStage] = 0
			} else {
				want[plan.FormStage] = 1
			}
			for _, l := range p.Layers {
				switch l.Material[0] {
				case 'w':
					want[plan.WaddingStage]++
				case 'p':
					want[plan.SliceStage]++
				}
			}
			if !reflect.DeepEqual(steps, want) {
				t.Errorf("stages %v, the pieces have %v", steps, want)
			}
			last := p.After(len(p.Stages))
			if !reflect.DeepEqual(last, p.Surface.Built) {
				t.Error("the last stage is not what is built")
			}
			size(t, p)
		})
	}
}

// size: the stages keep the plan's file below twice what it is without them.
func size(t *testing.T, p plan.Plan) {
	with, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	p.Stages = nil
	without, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	if ratio := float64(len(with)) / float64(len(without)); ratio > 2 {
		t.Errorf("the stages make the plan %.2f times as large", ratio)
	} else {
		t.Logf("the stages make the plan %.2f times as large", ratio)
	}
}

// The first stage is the form, the wadding lies between it and the finished mount.
func TestStagesLieBetweenFormAndMount(t *testing.T) {
	p, err := Run(context.Background(), demo(t, "demo-1872-bodice.json"), nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := range p.Surface.Heights {
		form, inner := p.Surface.Form[i].Tape(), 0.0
		if got := p.Stages[0].Outlines[i].Tape(); math.Abs(got-form) > 1 {
			t.Errorf("height %d: the first stage is %.1f mm round, the form %.1f", i, got, form)
		}
		for k := range p.Stages {
			tape := p.After(k)[i].Tape()
			if tape < inner-1 || tape > p.Surface.Built[i].Tape()+0.5 {
				t.Errorf("height %d stage %d: %.1f mm round after %.1f, in the end %.1f", i, k, tape, inner, p.Surface.Built[i].Tape())
			}
			inner = tape
		}
	}
}

func BenchmarkStages(b *testing.B) {
	for _, name := range []string{"demo-1872-bodice.json", "demo-three-values.json"} {
		b.Run(name, func(b *testing.B) {
			j, err := newJob(demo(b, name), nil)
			if err != nil {
				b.Fatal(err)
			}
			if err := j.build(); err != nil {
				b.Fatal(err)
			}
			s := j.outlines()
			for b.Loop() {
				j.stages(s)
			}
		})
	}
}

func BenchmarkHang(b *testing.B) {
	j, err := newJob(demo(b, "demo-1872-bodice.json"), nil)
	if err != nil {
		b.Fatal(err)
	}
	if err := j.build(); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		j.notices = nil
		j.hang()
		j.skirtPlan()
	}
}

func BenchmarkShape(b *testing.B) {
	r := demo(b, "demo-1872-bodice.json")
	for b.Loop() {
		if _, err := Shape(context.Background(), r); err != nil {
			b.Fatal(err)
		}
	}
}
