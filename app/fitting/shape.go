package fitting

import (
	"math"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// reshape carries the outline at a level from one girth to another: what is set of it by hand, else what was
// read of it.
func (f *fitter) reshape(l measure.Level, t tape, hand measure.Adjustment, from, to float64, m moves) {
	keys := map[string]measure.Key{"front_arc": t.front, "left_arc": t.left, "breadth": t.breadth, "depth": t.depth}
	whole := hand
	for _, p := range record.Parts {
		if v, read := f.out.Record.Garment.Bodice[keys[p.Key]]; read && *p.At(&whole) == nil {
			*p.At(&whole) = &v
		}
	}
	whole = reshaped(whole, from, to, m, f.arcs(l, from))
	for _, p := range record.Parts {
		v, byHand := *p.At(&whole), *p.At(&hand) != nil
		switch k := keys[p.Key]; {
		case v == nil || p.Key == "height":
		case k != "" && !byHand:
			f.set(f.bodice(), k, *v)
		case p.Key != "girth" || byHand || t.girth == "":
			f.shape(l, p, *v)
		}
	}
}

func shapePath(l measure.Level, part string) string { return "mount.shape." + string(l) + "." + part }

// shape sets one part of the outline at a level, within what a record can hold.
func (f *fitter) shape(l measure.Level, p record.Part, v float64) {
	path := shapePath(l, p.Key)
	within := f.within(v, p.Limit, l, path, string(l)+" "+p.Key)
	s := &f.out.Record.Mount.Shape
	if *s == nil {
		*s = measure.Shape{}
	}
	a := (*s)[l]
	*p.At(&a) = &within
	(*s)[l] = a
	f.gave(path, within)
}

// compare says where fitting and tape contradict each other at a level, and where the mount would pass
// the tape.
func (f *fitter) compare(l measure.Level, wanted float64) {
	read, ok := f.read(f.taken, l)
	if !ok {
		return
	}
	inside := wanted + f.ease(l)
	path, apart := f.bodice().path+string(at(l).girth), math.Abs(inside-read)
	switch {
	case wanted > read:
		f.say("fitting-beyond-tape", l, path, wanted-read,
			"At the %s the mount becomes %.0f mm larger than the garment by the tape, because it was slack at %s. Take the girth again, and try a toile before the object.", l, wanted-read, f.when)
	case apart > contradiction*f.stock.TapeError:
		f.say("fitting-against-tape", l, path, apart,
			"At the %s %s and the tape are %.0f mm apart, more than three tape errors: %.0f and %.0f mm. The fitting counts; take the girth again, and look whether something else holds the garment off.", l, f.when, apart, inside, read)
	}
}
