package pipeline

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/measure"
)

// over is by how much the mount is larger round than the skirt less an ease at the worst depth, mm, 0 for nowhere.
func (h *hung) over(ease float64) float64 {
	most := 0.0
	for _, g := range h.Girths {
		if g.Height > h.Lowest() {
			most = math.Max(most, g.Tape-g.Garment-h.ease+ease)
		}
	}
	return most
}

// askFrom is the least by which a mount must be wider than a guess before it is worth a word, mm.
const askFrom = 0.5

// askHip asks for the skirt's hip where only a guess says how wide it is there, and the mount is wider.
func (j *job) askHip() {
	over := j.skirt.over(j.skirt.ease)
	if _, taken := j.skirt.taken[measure.HipGirth]; taken || over < askFrom {
		return
	}
	j.notices = append(j.notices, measure.Notice{Code: "skirt-hip-not-taken", Level: measure.Hip, Key: skirtPath + measure.HipGirth, Amount: over, Message: fmt.Sprintf(
		"By a line from its waist to its hem the skirt is %.0f mm narrower with its ease than the mount over the hip, but its hip girth was not taken; take it before anything is made.", over)})
}

// sayFloor says where cloth lies on the floor though nobody wants a train.
func (j *job) sayFloor() {
	lies := math.Max(math.Max(j.skirt.Front.Train, j.skirt.Back.Train), math.Max(j.skirt.Right.Train, j.skirt.Left.Train))
	if j.skirt.Trained || lies < askFrom {
		return
	}
	j.notices = append(j.notices, measure.Notice{Code: "cloth-on-floor", Key: "mount.skirt.stand_height", Amount: lies,
		Message: fmt.Sprintf("With the waist at this height up to %.0f mm of the skirt lie on the floor; raise the stand, or call it a train.", lies)})
}

// cannotHang says why there is no skirt in the plan.
func cannotHang(err error) measure.Notice {
	why := strings.TrimPrefix(err.Error(), "skirt: ")
	n := measure.Notice{Code: "skirt-cannot-hang", Message: "Nothing is made for the skirt, because it cannot hang like this: " + why + "."}
	word, _, _ := strings.Cut(why, " ")
	switch m, ok := measure.Find(measure.Skirt, measure.Key(word)); {
	case ok:
		n.Key = skirtPath + m.Key
	case word == string(measure.WaistHeight):
		n.Key = "mount.skirt.stand_height"
	case word == "none":
		n.Key = skirtPath + measure.FrontLength
	}
	return n
}
