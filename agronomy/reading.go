package agronomy

// Nutrient is a reading's name on a soil report.
type Nutrient string

// The nutrients of a soil report. Sodium is listed because it can harm.
const (
	Phosphorus Nutrient = "phosphorus"
	Potassium  Nutrient = "potassium"
	Calcium    Nutrient = "calcium"
	Magnesium  Nutrient = "magnesium"
	Sulfur     Nutrient = "sulfur"
	Sodium     Nutrient = "sodium"
	Iron       Nutrient = "iron"
)

// Reading gives a report's reading of one nutrient.
func (r Report) Reading(n Nutrient) Reading {
	switch n {
	case Phosphorus:
		return r.Phosphorus
	case Potassium:
		return r.Potassium
	case Calcium:
		return r.Calcium
	case Magnesium:
		return r.Magnesium
	case Sulfur:
		return r.Sulfur
	case Sodium:
		return r.Sodium
	case Iron:
		return r.Iron
	}
	return Reading{}
}
