package plan

// Doubt is how far the fit can be relied on, over all levels together.
type Doubt struct {
	// ChanceAnywhere is the chance, 0 to 1, that the garment would strain at one level or more. It is never below
	// the chance of any one level, nor above the sum of all.
	ChanceAnywhere float64 `json:"chance_anywhere"`
	// EaseForAll is the one ease, in millimetres at every level, with which that chance is 1 %.
	EaseForAll float64 `json:"ease_for_all"`
	// Remeasure lists what to measure again, or for the first time, the most useful first; empty where
	// no reading would make strain less likely.
	Remeasure []Remeasure `json:"remeasure"`
}

// Remeasure is what one more reading would do.
type Remeasure struct {
	Key   string  `json:"key"`   // key path in the record, such as "garment.bodice.waist_girth"
	Taken bool    `json:"taken"` // false: it was drawn from statistics, and would be measured for the first time
	Share float64 `json:"share"` // of the variance where strain is likely, how much comes from it, 0 to 1
	// ChanceAfter is the chance of strain anywhere once it has been read once more, the smaller reading kept and the
	// mount made anew with the same ease; 0 to 1.
	ChanceAfter float64 `json:"chance_after"`
}
