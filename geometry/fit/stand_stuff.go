package fit

// Stuff is a material that mounts are made of, and what it weighs.
type Stuff struct {
	Name   string
	Solid  float64 // kg in a cubic metre; 0 for what is sold by area
	Sheet  float64 // kg in a square metre; 0 for what is sold by volume
	Source string
}

// The stuffs of a mount. A maker who has weighed a piece knows better.
var (
	Foam    = Stuff{Name: "closed-cell polyethylene plank", Solid: 35, Source: "2.2 lb/ft³, the heaviest common grade; CAMEO, Museum of Fine Arts Boston, polyethylene plank entries"}
	Wadding = Stuff{Name: "needle-punched polyester wadding", Solid: 56, Source: "140 g/m² at 2.5 mm; Te Papa, how to make a garment fit a mannequin; quiltingboard.com 3862193"}
	Net     = Stuff{Name: "nylon net", Sheet: 0.02, Source: "10 to 30 g/m²; from memory"}
	Steel   = Stuff{Name: "steel", Solid: 7850, Source: "from memory"}
	Jersey  = Stuff{Name: "cotton jersey", Sheet: 0.165, Source: "130 to 200 g/m²; from memory"}
	Cotton  = Stuff{Name: "washed cotton", Sheet: 0.15, Source: "from memory"}
	Card    = Stuff{Name: "acid-free card, 1 mm", Sheet: 0.7, Source: "from memory"}
)

// OfVolume is the mass of so many cubic millimetres, kg.
func (s Stuff) OfVolume(mm3 float64) float64 { return s.Solid * mm3 * 1e-9 }

// OfArea is the mass of so many square millimetres, kg.
func (s Stuff) OfArea(mm2 float64) float64 { return s.Sheet * mm2 * 1e-6 }
