package agronomy

import (
	"strings"
)

// GrassTarget is the soil pH that suits a grass.
type GrassTarget struct {
	Grass     string
	Low, High PH // does well between
	Default   PH // limed to
	LimeBelow PH // lime only under this
	Source    string
}

var grassTargets = []GrassTarget{
	{"Kentucky bluegrass", 6.0, 7.0, 6.5, 6.0, "psu-liming-turf"},
	{"perennial ryegrass", 6.0, 7.0, 6.5, 6.0, "psu-liming-turf"},
	{"tall fescue", 5.8, 7.0, 6.2, 5.8, "nc-home-report, ar-lime"},
	{"fine fescue", 5.5, 6.5, 6.0, 5.5, "ext-609803"},
	{"creeping bentgrass", 5.5, 6.5, 6.0, 5.5, "common"}, // from memory
	{"bermudagrass", 5.5, 7.0, 6.2, 5.5, "nc-home-report, uga-792"},
	{"zoysiagrass", 5.8, 7.0, 6.2, 5.8, "nc-home-report, ar-lime"},
	{"St. Augustinegrass", 5.5, 7.0, 6.2, 5.5, "nc-home-report, uga-792"},
	{"centipedegrass", 5.0, 6.0, 5.5, 5.0, "nc-home-report"},
	{"bahiagrass", 5.5, 6.5, 5.8, 5.5, "common"},        // from memory
	{"carpetgrass", 4.8, 5.8, 5.3, 4.8, "common"},       // from memory
	{"buffalograss", 6.0, 7.5, 6.5, 6.0, "common"},      // from memory
	{"seashore paspalum", 5.5, 7.5, 6.5, 5.5, "common"}, // from memory
}

// GrassPH gives the pH that suits a grass, by its common name, in capitals or not.
func GrassPH(grass string) (GrassTarget, bool) {
	for _, t := range grassTargets {
		if strings.EqualFold(t.Grass, grass) {
			return t, true
		}
	}
	return GrassTarget{}, false
}

// Shortfall is how far under the target a soil is limed again.
const Shortfall PH = 0.2 // [tristate-1995]

// Capital starts a sentence with a plain ASCII word.
func Capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
