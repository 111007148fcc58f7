package solid

import "understructure/patterns/plan"

// The names of bodies, which are also those of their files.
const (
	Mount = "mount"
	Skirt = "skirt-support"
)

// Bodies are the mount and, where steels and their cloth hold the skirt, the space that they take, the mount in its midst.
// A support that does not go round the mount's axis is left out, since templates are worth more than its picture. A
// plan that is not built has no bodies.
func Bodies(p plan.Plan) ([]Body, error) {
	if len(p.Surface.Built) == 0 {
		return nil, nil
	}
	mount, err := Of(p.Surface.Heights, p.Surface.Built)
	if err != nil {
		return nil, err
	}
	mount.Name = Mount
	if p.Skirt == nil {
		return []Body{mount}, nil
	}
	skirt, err := Of(p.Skirt.Heights, p.Skirt.Support)
	if skirt.Name = Skirt; err != nil || len(skirt.Triangles) == 0 {
		return []Body{mount}, nil
	}
	return []Body{mount, skirt}, nil
}
