package pipeline

import (
	"context"
	"fmt"
	"math"

	"understructure/app/fitting"
	"understructure/app/record"
	"understructure/geometry/measure"
)

// A mount made anew from its pieces can come out larger than it was reckoned, most at the steps of a foam core, where
// strips of wadding bridge what the reckoning follows. Such a mount is drawn once more, smaller where it
// would strain, rather than refused.
const (
	mostRounds = 3    // of drawing it again; what strains then is refused
	spareMore  = 2.0  // mm beyond what it was too large by, so that the next round ends it
	spareReach = 60.0 // mm above and below over which the figure runs back to its shape: a plank of 50 mm and the feather of the strips at its step (padding.EdgeHalf)
)

// spared is how much smaller than the ease asks the figure is drawn, by height above the waist.
type spared []struct{ height, by float64 }

// at is what is spared at a height: the most that any place near asks for.
func (s spared) at(z float64) float64 {
	most := 0.0
	for _, p := range s {
		most = math.Max(most, p.by*(1-math.Abs(z-p.height)/spareReach))
	}
	return most
}

// made builds a mount and cuts its pieces, smaller where the pieces would make it too large for its garment.
func made(ctx context.Context, r record.Record, tell func(stage string, done float64) error) (*job, fitting.Applied, error) {
	var spare spared
	for round := 0; ; round++ {
		j, seen, err := start(r, spare)
		if err != nil {
			return nil, seen, err
		}
		if err := tell("mount", 0.2); err != nil {
			return nil, seen, err
		}
		if err := j.build(); err != nil {
			return nil, seen, err
		}
		if err := tell("pieces", 0.4); err != nil {
			return nil, seen, err
		}
		if err := j.cut(ctx); err != nil {
			return nil, seen, err
		}
		j.remade = j.asBuilt()
		if len(j.strains) == 0 || round == mostRounds {
			j.noteSpared()
			return j, seen, nil
		}
		for _, o := range j.strains {
			o.by += spareMore + spare.at(o.height)
			spare = append(spare, o)
		}
	}
}

// noteSpared says where the mount is smaller than the ease asks.
func (j *job) noteSpared() {
	most := 0
	for i, p := range j.spare {
		if p.by > j.spare[most].by {
			most = i
		}
	}
	if len(j.spare) == 0 {
		return
	}
	p := j.spare[most]
	level := j.nearest(p.height)
	j.notices = append(j.notices, measure.Notice{
		Code: "drawn-smaller", Level: level, Amount: p.by,
		Message: fmt.Sprintf("At or near the %s the pieces would make the mount larger than the garment; it is drawn up to %.0f mm smaller there than the ease asks. Thinner planks or wadding follow the figure more closely.", level, p.by),
	})
}

// nearest is the level of the garment nearest to a height.
func (j *job) nearest(z float64) measure.Level {
	best := j.garment.Levels[0]
	for _, l := range j.garment.Levels {
		if math.Abs(l.Height-z) < math.Abs(best.Height-z) {
			best = l
		}
	}
	return best.Name
}
