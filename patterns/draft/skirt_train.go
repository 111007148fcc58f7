package draft

// train drafts the flat support that lies on the floor under a train: two covers with wadding
// between. How it is made is common practice, no published source.
func (b *supporter) train() error {
	ring, err := b.skirt.TrainSupport()
	if err != nil {
		return err
	}
	p := stuffed(b.number('P')+"-train", "train support, lies on the floor, the back upward; one face turned over, wadding between", ring)
	p.Count = 2
	b.add(p)
	b.cut(Cut{Name: "wadding of the train support", Material: "wadding", Count: 1, Note: "one layer, cut 10 mm smaller than the seam line all round"})
	return nil
}
