package material

import (
	"slices"
	"strings"
	"unicode"

	"swardbook/agronomy"
)

// The words that give away what kills or prevents weeds, moss, insects or
// disease: beginnings of words, so that "weedkiller" is found and "seaweed" is
// not; whole words, where a beginning would find too much; and the common names
// of what is most often mixed into a bag. [common] from memory
var (
	pesticideStems = []string{"weed", "crabgrass", "goosegrass", "nutsedge", "dandelion", "broadleaf", "moss",
		"herbicid", "insect", "pesticid", "fungicid", "fungus", "disease", "grub", "chinch", "armyworm", "sodworm", "webworm", "nematicid",
		"prevent", "kill", "preemerg", "pre-emerg", "postemerg", "post-emerg",
		"prodiamin", "dithiopyr", "pendimethalin", "benefin", "trifluralin", "oxadiazon", "siduron", "isoxaben", "mesotrion", "quinclorac",
		"dicamba", "mecoprop", "triclopyr", "sulfentrazon", "carfentrazon", "atrazin", "glyphosat",
		"imidacloprid", "chlorantraniliprol", "clothianidin", "bifenthrin", "cyhalothrin", "carbaryl", "trichlorfon",
		"azoxystrobin", "propiconazol", "gluten"} // corn gluten meal keeps seedlings from rooting
	pesticideWords = []string{"ant", "ants", "tick", "ticks", "flea", "fleas", "2,4-d", "mcpp", "mcpa"}
)

// PesticideWord finds the word in a material's name that says it kills or
// prevents weeds, moss, insects or disease; false if none does.
func PesticideWord(name string) (string, bool) {
	parts := func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) && c != ',' && c != '-' }
	for _, whole := range strings.FieldsFunc(strings.ToLower(name), parts) {
		for _, w := range append(strings.FieldsFunc(whole, func(c rune) bool { return c == ',' || c == '-' }), whole) {
			if slices.Contains(pesticideWords, w) || slices.ContainsFunc(pesticideStems, func(s string) bool { return strings.HasPrefix(w, s) }) {
				return w, true
			}
		}
	}
	return "", false
}

// OffSeedlings is the caution that goes with every job on a young stand.
func OffSeedlings() agronomy.Reason {
	return agronomy.Reason{Text: "Weed killer and weed preventer stay off until the grass has been mowed three or four times.", Source: "common"}
}
