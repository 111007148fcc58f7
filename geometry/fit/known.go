package fit

import "math"

// Known is what is known of a value that was read, or drawn.
type Known struct {
	Off  float64 // how much larger the truth is expected to be than the value that the plan reckons with
	SD   float64 // of the truth about that, one standard deviation
	Once float64 // of one more reading about the truth
}

// worth is how many readings the error that is given for a tape is worth beside the spread of the readings
// themselves. From memory, no published source.
const worth = 4.0

// Read is what one or more readings of a value tell, of which one is kept; sd is one standard deviation of a reading.
//
// The best estimate is the mean, with the error of one reading over the root of how many there are. Where the
// smallest is kept it lies below that: of two readings by 1/√π of an error on average (order statistics of the normal
// distribution; H. A. David, H. N. Nagaraja, Order Statistics, 3rd ed. 2003, chapter 3), and here by as much as
// these did. How far they lie apart is evidence of the error: its square is the mean of the square given,
// counted as four readings, and theirs (the scaled inverse-χ² rule; A. Gelman et al., Bayesian Data Analysis, 3rd ed.
// 2013, section 3.3, whose t distribution we take for a normal one).
func Read(kept, sd float64, readings ...float64) Known {
	n := float64(len(readings))
	if n < 2 {
		return Known{SD: sd, Once: sd}
	}
	mean, square := 0.0, 0.0
	for _, r := range readings {
		mean += r / n
	}
	for _, r := range readings {
		square += (r - mean) * (r - mean)
	}
	once := math.Sqrt((worth*sd*sd + square) / (worth + n - 1))
	return Known{Off: mean - kept, SD: once / math.Sqrt(n), Once: once}
}
