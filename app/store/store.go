// Package store says which form serves which garment: with the least wadding and without strain, each form
// used once; and for every garment the best form of all, where forms are used one after the other.
// It does not compute a mount, it does not read files, and it draws nothing.
package store

import (
	"context"
	"math"
	"runtime"

	"understructure/app/batch"
	"understructure/app/record"
	"understructure/patterns/plan"
)

// Shape computes a mount without its pieces.
type Shape func(context.Context, record.Record) (plan.Plan, error)

// Pair is one garment on one form.
type Pair struct {
	Serves  bool    // the form lies inside the wanted shape everywhere, and nothing would strain
	Litres  float64 // of wadding between form and garment
	Squeeze float64 // mm of tape by which the form is too big where it is worst; 0 where it serves
	Level   string  // where that is; "" where it serves
	Short   float64 // mm by which the form ends before the garment does, above or below: to be built on
	Err     error   // why no mount can be computed
}

// Match is what serves each garment, by index. An index of -1 is no form.
type Match struct {
	Pairs  [][]Pair // by garment, then by form
	Chosen []int    // each form once: as many garments served as possible, and the least wadding for them all
	Best   []int    // the form with the least wadding for each garment alone
	Least  []int    // the form to squeeze least for each garment that none serves
}

// Find tries every garment on every form, on all processors, and matches them. tell hears how many pairs are
// done. On error, which is the context's, there is no match.
func Find(ctx context.Context, garments []record.Record, forms []record.Form, shape Shape, tell func(done, all int)) (Match, error) {
	m := Match{Pairs: make([][]Pair, len(garments))}
	for i := range m.Pairs {
		m.Pairs[i] = make([]Pair, len(forms))
	}
	done, all := 0, len(garments)*len(forms)
	try := func(k int) Pair { return tried(ctx, garments[k/len(forms)], forms[k%len(forms)], shape) }
	batch.Each(ctx, all, runtime.GOMAXPROCS(0), try, func(k int, p Pair) {
		m.Pairs[k/len(forms)][k%len(forms)] = p
		done++
		tell(done, all)
	})
	if err := ctx.Err(); err != nil {
		return Match{}, err
	}
	m.choose()
	return m, nil
}

// tried is a garment on a form, padded, with everything else as its record has it.
func tried(ctx context.Context, r record.Record, f record.Form, shape Shape) Pair {
	r.Form, r.Mount.Build = &f, "padded"
	p, err := shape(ctx, r)
	if err != nil {
		return Pair{Err: err}
	}
	return judged(p)
}

// judged reads from a plan whether its form serves.
func judged(p plan.Plan) Pair {
	out := Pair{Serves: !p.Strains(), Litres: p.Volumes["wadding"].Space / 1e6}
	for _, w := range p.Warnings {
		switch w.Code {
		case "form-too-big", "strain":
			out.Serves = false
			if w.Amount > out.Squeeze {
				out.Squeeze, out.Level = w.Amount, w.Level
			}
		case "form-short":
			out.Short = math.Max(out.Short, w.Amount)
		}
	}
	return out
}

func (m *Match) choose() {
	var costs [][]float64
	for _, pairs := range m.Pairs {
		row := make([]float64, len(pairs))
		best, least := -1, -1
		for j, p := range pairs {
			row[j] = math.Inf(1)
			switch {
			case p.Err != nil:
			case p.Serves:
				row[j] = p.Litres
				if best < 0 || p.Litres < pairs[best].Litres {
					best = j
				}
			case least < 0 || p.Squeeze < pairs[least].Squeeze:
				least = j
			}
		}
		if best >= 0 {
			least = -1
		}
		costs = append(costs, row)
		m.Best, m.Least = append(m.Best, best), append(m.Least, least)
	}
	m.Chosen = assign(costs)
}
