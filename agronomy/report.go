package agronomy

import "strings"

// Extractant names the liquid a laboratory used to draw P, K, Ca and Mg from
// the soil. Readings under different extractants are different scales.
type Extractant string

// The extractants that have a scale here.
const (
	Mehlich3        Extractant = "mehlich-3"
	Mehlich1        Extractant = "mehlich-1"
	Bray1           Extractant = "bray-1"
	Olsen           Extractant = "olsen"
	Morgan          Extractant = "morgan"
	ModifiedMorgan  Extractant = "modified-morgan"
	AmmoniumAcetate Extractant = "ammonium-acetate"
)

// Extractants lists them. The slice is the caller's own.
func Extractants() []Extractant {
	return []Extractant{Mehlich3, Mehlich1, Bray1, Olsen, Morgan, ModifiedMorgan, AmmoniumAcetate}
}

// spellings are the other names of extractants, as [squeezed] leaves them.
var spellings = map[string]Extractant{
	"m3": Mehlich3, "mehlichiii": Mehlich3, "m1": Mehlich1, "mehlichi": Mehlich1, "doubleacid": Mehlich1,
	"bray": Bray1, "brayp1": Bray1, "brayi": Bray1, "p1": Bray1, "weakbray": Bray1, "olsenp": Olsen, "bicarbonate": Olsen, "sodiumbicarbonate": Olsen,
	"mm": ModifiedMorgan, "nh4oac": AmmoniumAcetate,
}

// ExtractantNamed finds an extractant by any usual spelling: "Mehlich I", "M3",
// "Bray P1".
func ExtractantNamed(name string) (Extractant, bool) {
	got := squeezed(name)
	for _, e := range Extractants() {
		if squeezed(string(e)) == got {
			return e, true
		}
	}
	e, ok := spellings[got]
	return e, ok
}

// squeezed leaves the small letters and digits of a name.
func squeezed(name string) string {
	return strings.Map(func(c rune) rune {
		if c >= 'a' && c <= 'z' || c >= '0' && c <= '9' {
			return c
		}
		return -1
	}, strings.ToLower(name))
}

// BufferMethod names the buffer solution behind a buffer pH.
type BufferMethod string

// The buffer methods of the site file.
const (
	SMP             BufferMethod = "smp"
	Sikora          BufferMethod = "sikora"
	AdamsEvans      BufferMethod = "adams-evans"
	MehlichBuffer   BufferMethod = "mehlich"
	ModifiedMehlich BufferMethod = "modified-mehlich"
)

// Name is the method as the trade writes it: "Adams-Evans" for adams-evans.
func (m BufferMethod) Name() string {
	switch m {
	case SMP:
		return "SMP"
	case Sikora:
		return "Sikora"
	case AdamsEvans:
		return "Adams-Evans"
	case MehlichBuffer:
		return "Mehlich"
	case ModifiedMehlich:
		return "modified Mehlich"
	}
	return string(m)
}

// BufferMethods lists them. The slice is the caller's own.
func BufferMethods() []BufferMethod {
	return []BufferMethod{SMP, Sikora, AdamsEvans, MehlichBuffer, ModifiedMehlich}
}

// Texture is the soil texture class, as a person tells it by feel.
type Texture string

// The textures of the site file, from light to heavy.
const (
	Sand      Texture = "sand"
	LoamySand Texture = "loamy sand"
	SandyLoam Texture = "sandy loam"
	Loam      Texture = "loam"
	SiltLoam  Texture = "silt loam"
	ClayLoam  Texture = "clay loam"
	Clay      Texture = "clay"
	Muck      Texture = "muck"
)

// Textures lists them. The slice is the caller's own.
func Textures() []Texture {
	return []Texture{Sand, LoamySand, SandyLoam, Loam, SiltLoam, ClayLoam, Clay, Muck}
}

// Buffer is a buffer pH with its method; a zero PH means the lab gave none.
type Buffer struct {
	Method BufferMethod
	PH     PH
}

// Reading is one nutrient's figure on a soil report, brought to elemental ppm.
type Reading struct {
	Given   bool
	PPM     PPM      // elemental, under the report's extractant
	PerAcre PerAcre  // elemental, if the sheet counts by the acre: as printed, before any depth
	Doubled bool     // PerAcre was taken as twice the ppm, not as pounds in the sampled depth
	AsGiven string   // the words of the report: "28 lb/acre"
	Steps   []Reason // how AsGiven became PPM
	Wanted  Optimum  // the lab's own optimum, if it printed one
}

// Optimum is a lab's own wanted value for one nutrient, low to high, in
// elemental ppm. High equals Low when the lab printed one value.
type Optimum struct {
	Given     bool
	Low, High PPM
	AsGiven   string // "12 to 20 ppm", "3 % of CEC"
	Steps     []Reason
}

// Report is a lab's results for one area. Zero values are not given.
type Report struct {
	Depth         Inches // of the sample
	Method        Extractant
	PH            PH
	Buffer        Buffer
	Texture       Texture
	CEC           Meq
	Acidity       Meq // exchangeable acidity, where the lab prints it
	OrganicMatter Percent
	Phosphorus    Reading
	Potassium     Reading
	Calcium       Reading
	Magnesium     Reading
	Sulfur        Reading
	Sodium        Reading
	Iron          Reading
	TargetPH      PH          // the user's wish; 0 takes the grass's
	LowerPH       bool        // the user asks for sulfur
	Printed       Recommended // what the laboratory itself asks for
}

// Recommended is what the laboratory itself asks for on a lawn, in lb/1000 sq
// ft; nil where it printed nothing. It counts before every table.
type Recommended struct {
	Lime                        *PerThousand // of stone that acts fully
	Nitrogen, Phosphate, Potash *PerThousand // N, P2O5, K2O in a year
}
