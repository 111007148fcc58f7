package picture

// light is how the mount is lit, in the figure's own axes: the lamps turn with the viewer.
type light struct {
	key, fill, eye vec
	shadow         float32 // how much darker than in full light it can be
}

// lamps places a lamp high on the viewer's left and a weak one low on the right. Colours that are to be
// compared are lit more evenly.
func lamps(m Mode, right, near, up vec) light {
	place := func(x, y, z float32) vec {
		return vec{
			x*right.x + y*near.x + z*up.x,
			x*right.y + y*near.y + z*up.y,
			x*right.z + y*near.z + z*up.z,
		}
	}
	l := light{key: place(-0.45, 0.72, 0.53), fill: place(0.75, 0.6, -0.28), eye: near, shadow: 0.58}
	if m == Clearance {
		l.shadow = 0.24
	}
	return l
}

// on is how light a face with this normal is, from 0 to 1. The lamp's light goes a little way round
// the edge, as that of a window does; faces seen at a slant are a little darker, which shows how round they are.
func (l light) on(normal vec) float32 {
	const round = 0.2
	k := max(0, (l.key.dot(normal)+round)/(1+round))
	k = k * (1.2 - 0.2*k)
	f := max(0, l.fill.dot(normal))
	away := 1 - max(0, l.eye.dot(normal))
	return min(1, max(0, 1-l.shadow*(1-k)+0.10*f*f-0.3*l.shadow*away*away))
}
