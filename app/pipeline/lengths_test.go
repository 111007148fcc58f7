package pipeline_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/torso"
	"understructure/patterns/plan"
)

// truly is how closely a length taken must be found again on the plan's outlines, mm.
const truly = 1.0

// believed is how far a length taken may be from the one built without a word, mm. The way of
// the armscye over the skin is drawn, not taken: a tenth.
func believed(k measure.Key, taken float64) float64 {
	if k == measure.ArmscyeGirth {
		return taken / 10
	}
	return truly
}

func TestLengthsAreFoundOnTheOutlines(t *testing.T) {
	records := map[string]record.Record{}
	for _, name := range []string{"demo-1872-bodice", "demo-boy-1895", "demo-three-values"} {
		r, err := record.Load("../../assets/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		records[name] = r
	}
	for k := range 5 {
		records[strconv.Itoa(k)] = randomRecord(seed, uint64(k))
	}
	seen := map[measure.Key]int{}
	for name, r := range records {
		p, err := run(r, false)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		bodice, _ := measure.TrustedSkirt(measure.Trusted(r.Garment.Bodice), r.Garment.Skirt)
		figure, err := torso.Build(bodice, r.Object.Wearer, r.Object.Year, r.Mount.Shape)
		if err != nil {
			t.Fatal(err)
		}
		levelsStand(t, name, p, figure)
		found := garmentOf(p).lengths(figure)
		for _, l := range p.Lengths {
			key := measure.Key(strings.TrimPrefix(l.Key, "garment.bodice."))
			if off := math.Abs(l.Taken - l.Built); off > believed(key, l.Taken) && !disagrees(p, l.Key) {
				t.Errorf("%s: %s was taken as %.1f and built as %.1f without a word", name, key, l.Taken, l.Built)
			}
			if l.Taken != bodice[key] {
				t.Errorf("%s: %s is %.1f in the plan, %.1f in the record", name, key, l.Taken, bodice[key])
			}
			walked, ok := found[key]
			if key == measure.ArmscyeGirth {
				walked, ok = loop(figure), true // no outline runs along the armhole
			}
			if !ok {
				t.Errorf("%s: nobody walks %s", name, key)
				continue
			}
			seen[key]++
			if off := math.Abs(walked - l.Built); off > truly {
				t.Errorf("%s: %s is built as %.2f, walked %.2f", name, key, l.Built, walked)
			}
		}
	}
	for _, k := range []measure.Key{measure.BackWaist, measure.FrontWaist, measure.NeckToBustPoint, measure.SideLength, measure.WaistToHighHip, measure.WaistToHip, measure.ArmscyeGirth} {
		if seen[k] == 0 {
			t.Errorf("no record took %s", k)
		}
	}
}

// levelsStand holds the heights of the levels against the figure and the outlines.
func levelsStand(t *testing.T, name string, p plan.Plan, figure torso.Torso) {
	t.Helper()
	for _, l := range p.Levels {
		at := figure.At(measure.Level(l.Name))
		if d := l.Height - p.StandHeight - at.Height; math.Abs(d) > 1e-6 {
			t.Errorf("%s: %s stands %.3f mm off", name, l.Name, d)
		}
		for i, h := range p.Surface.Heights {
			if math.Abs(h-l.Height) > 1e-6 {
				continue
			}
			if d := p.Surface.Garment[i].Tape() - *l.GarmentGirth; math.Abs(d) > 0.1 {
				t.Errorf("%s: the outline at the %s is %.2f mm off its girth", name, l.Name, d)
			}
		}
	}
}

func garmentOf(p plan.Plan) outlines {
	o := outlines{rings: p.Surface.Garment}
	for _, h := range p.Surface.Heights {
		o.heights = append(o.heights, h-p.StandHeight)
	}
	return o
}

func disagrees(p plan.Plan, key string) bool {
	for _, w := range p.Warnings {
		if w.Code == "lengths-disagree" && strings.HasSuffix(key, w.Key) && w.Amount > 0 {
			return true
		}
	}
	return false
}

func loop(figure torso.Torso) float64 {
	l := 0.0
	for i, p := range figure.Armscye {
		l += p.Dist(figure.Armscye[(i+1)%len(figure.Armscye)])
	}
	return l
}

// A tape over two posts spans the hollow between them: 200 = 60 + 80 + 60 along the posts'
// outer sides (a 3-4-5 triangle twice, hand reckoned).
func TestTightSpansHollows(t *testing.T) {
	p := []plane.Point{{X: 0, Y: 0}, {X: 30, Y: 40}, {X: 60, Y: 10}, {X: 130, Y: 40}, {X: 160, Y: 0}}
	if got := tight(p); math.Abs(got-200) > 1e-9 {
		t.Errorf("%g", got)
	}
}
