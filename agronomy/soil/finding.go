package soil

import "swardbook/agronomy"

// Level is where a reading stands on its scale.
type Level string

// Levels, lowest first. Unknown means no scale fits the reading.
const (
	VeryLow  Level = "very low"
	Low      Level = "low"
	Medium   Level = "medium"
	High     Level = "high"
	VeryHigh Level = "very high"
	Unknown  Level = "unknown"
)

// Finding is what one reading means, in words. Rank 1 limits the grass most.
type Finding struct {
	Rank    int
	Reading string  // "ph", "phosphorus", "potassium", …
	Value   float64 // in Unit
	Unit    string  // "", "ppm", "% of CEC"
	Level   Level
	Text    string // one or two sentences for a gardener
	Source  string // of the scale; "" where the laboratory's own optimum was read
	Why     []agronomy.Reason
}
