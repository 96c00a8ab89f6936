package material

import (
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/check"
)

func TestPesticideWord(t *testing.T) {
	for _, name := range []string{"Weed & feed 28-0-3", "weedfeed", "WEED-AND-FEED", "crabgrass preventer 13-0-0", "lawn food with crabgrass control",
		"moss killer with iron", "Moss control 22-2-2", "grub-free 20-0-5", "insect control and food", "insecticide", "herbicide 0-0-7", "fungicide", "pre-emergent 19-0-6",
		"Pre-emergence 18-0-4", "preemergence 0-0-7", "0-0-7 prodiamine", "0-0-7 + dithiopyr", "2,4-D and potash", "feed (with MCPP)", "ant and tick granules", "corn gluten meal 9-1-0", "broadleaf weeds, 24-0-10"} {
		if _, ok := PesticideWord(name); !ok {
			t.Errorf("%q holds a pesticide", name)
		}
	}
	for _, name := range []string{"", "seaweed extract 1-0-4", "liquid seaweed", "Seaweed-meal", "starter 18-24-12", "pelletized limestone", "plant food", "elegant green 24-0-8", "premium lawn food",
		"urea 46-0-0", "sulfate of potash", "antler meal", "winter feed", "gypsum", "fine fescue food", "pre-plant starter", "early emergence starter", "ground stone", "tweed"} {
		if word, ok := PesticideWord(name); ok {
			t.Errorf("%q is taken for a pesticide by %q", name, word)
		}
	}
	for _, m := range TradeMaterials() {
		if word, ok := PesticideWord(m.Name); ok || m.Pesticide {
			t.Errorf("%s is taken for a pesticide by %q", m.Name, word)
		}
	}
	check.Resolve(t, []agronomy.Reason{OffSeedlings()})
}
