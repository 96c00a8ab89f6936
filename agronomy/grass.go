package agronomy

import "strings"

// Grass is one lawn grass with the figures that follow from it alone. A zero
// range is not known here; ask the seed seller or the extension office.
type Grass struct {
	Name         string
	Season       Season
	N            [3]PerThousand // a year's N by care low, medium, high, clippings removed; zero: no figure
	Published    [2]PerThousand // widest published range of a year's N, outside Florida
	Florida      [3][2]PerThousand
	Ceiling      bool           // a mixture with this grass is held to N[2]
	EmergeDays   [2]int         // from sowing to seedlings, in good warmth
	SeedRate     [2]PerThousand // of seed, on bare soil
	Mow          [2]Inches      // lawn height
	NSource      string
	EmergeSource string
	SeedSource   string
	MowSource    string
}

// HasN says whether a yearly nitrogen figure is known.
func (g Grass) HasN() bool { return g.N[1] > 0 }

// grasses holds the lawn grasses; the pH that suits each is in target.go. The three
// yearly amounts are this tool's own choice inside every published range named; the
// ranges are the facts. The regions of Florida are north, central, south.
var grasses = []Grass{
	{Name: "Kentucky bluegrass", Season: Cool,
		N: [3]PerThousand{1.5, 3, 4}, Published: [2]PerThousand{1, 4}, NSource: "ill-1995, ksu-eckert", // [ill-1995]
		EmergeDays: [2]int{14, 28}, EmergeSource: "common", // [common]
		SeedRate: [2]PerThousand{2, 3}, SeedSource: "unl-renovate", // [unl-renovate]
		Mow: [2]Inches{2.5, 3.5}, MowSource: "common"}, // [common]
	{Name: "perennial ryegrass", Season: Cool,
		N: [3]PerThousand{2, 3, 4}, Published: [2]PerThousand{2, 4}, NSource: "ill-1995", // [ill-1995]
		EmergeDays: [2]int{5, 10}, EmergeSource: "common", // [common]
		SeedRate: [2]PerThousand{5, 8}, SeedSource: "common", // [common]
		Mow: [2]Inches{2, 3}, MowSource: "common"}, // [common]
	{Name: "tall fescue", Season: Cool,
		N: [3]PerThousand{1.5, 2.5, 4}, Published: [2]PerThousand{1, 4}, NSource: "ill-1995, uga-hall, ksu-eckert, nc-tallfescue", // [ill-1995] [ksu-eckert]
		EmergeDays: [2]int{7, 14}, EmergeSource: "common", // [common]
		SeedRate: [2]PerThousand{6, 8}, SeedSource: "unl-renovate", // [unl-renovate]
		Mow: [2]Inches{3, 4}, MowSource: "common"}, // [common]
	{Name: "fine fescue", Season: Cool, Ceiling: true,
		N: [3]PerThousand{1, 1.5, 2.5}, Published: [2]PerThousand{1, 3}, NSource: "ill-1995", // [ill-1995]
		EmergeDays: [2]int{7, 14}, EmergeSource: "common", // [common]
		SeedRate: [2]PerThousand{3, 5}, SeedSource: "common", // [common]
		Mow: [2]Inches{2.5, 4}, MowSource: "common"}, // [common]
	{Name: "creeping bentgrass", Season: Cool,
		N: [3]PerThousand{2, 3, 4}, Published: [2]PerThousand{2, 6}, NSource: "ill-1995", // [ill-1995]
		EmergeDays: [2]int{7, 14}, EmergeSource: "common"}, // [common] from memory
	{Name: "bermudagrass", Season: Warm,
		N: [3]PerThousand{2, 3, 4}, Published: [2]PerThousand{2, 4}, NSource: "uga-hall, uf-fyn", // [uga-hall]
		Florida:    [3][2]PerThousand{{3, 5}, {4, 6}, {5, 7}}, // [uf-fyn]
		EmergeDays: [2]int{10, 21}, EmergeSource: "common",    // [common] from memory
		SeedRate: [2]PerThousand{1, 2}, SeedSource: "common", // [common] hulled seed
		Mow: [2]Inches{1, 2}, MowSource: "common"}, // [common]
	{Name: "zoysiagrass", Season: Warm,
		N: [3]PerThousand{1, 2, 3}, Published: [2]PerThousand{2, 4}, NSource: "ill-1995, uga-hall, uf-fyn", // [ill-1995] [uga-hall]
		Florida:    [3][2]PerThousand{{3, 5}, {3, 6}, {4, 6}}, // [uf-fyn]
		EmergeDays: [2]int{14, 28}, EmergeSource: "common",    // [common] from memory
		SeedRate: [2]PerThousand{1, 2}, SeedSource: "common", // [common] from memory
		Mow: [2]Inches{1, 2.5}, MowSource: "common"}, // [common]
	{Name: "St. Augustinegrass", Season: Warm,
		N: [3]PerThousand{2, 3, 4}, Published: [2]PerThousand{2, 4}, NSource: "uga-hall, uf-fyn, uf-enh73", // [uga-hall] [uf-enh73]
		Florida: [3][2]PerThousand{{2, 4}, {2, 5}, {4, 6}}, // [uf-fyn]
		Mow:     [2]Inches{2.5, 4}, MowSource: "common"},   // [common]
	{Name: "centipedegrass", Season: Warm, Ceiling: true,
		N: [3]PerThousand{0.5, 1, 2}, Published: [2]PerThousand{0.5, 2}, NSource: "uga-hall, uf-fyn", // [uga-hall]
		Florida:    [3][2]PerThousand{{1, 2}, {2, 3}, {2, 3}}, // [uf-fyn]
		EmergeDays: [2]int{14, 28}, EmergeSource: "common",    // [common] from memory
		SeedRate: [2]PerThousand{0.25, 0.5}, SeedSource: "common", // [common]
		Mow: [2]Inches{1.5, 2}, MowSource: "common"}, // [common]
	{Name: "bahiagrass", Season: Warm,
		N: [3]PerThousand{1, 2, 3}, Published: [2]PerThousand{2, 4}, NSource: "uf-fyn", // [uf-fyn]
		Florida:    [3][2]PerThousand{{2, 3}, {2, 4}, {2, 4}}, // [uf-fyn]
		EmergeDays: [2]int{14, 28}, EmergeSource: "common",    // [common] from memory
		SeedRate: [2]PerThousand{5, 10}, SeedSource: "common", // [common] from memory
		Mow: [2]Inches{3, 4}, MowSource: "common"}, // [common]
	{Name: "carpetgrass", Season: Warm,
		N: [3]PerThousand{0.5, 1, 2}, Published: [2]PerThousand{0.5, 2}, NSource: "common", // [common]
		SeedRate: [2]PerThousand{1, 3}, SeedSource: "common"}, // [common]
	{Name: "buffalograss", Season: Warm,
		N: [3]PerThousand{0.5, 1, 2}, Published: [2]PerThousand{1, 3}, NSource: "ill-1995", // [ill-1995]
		EmergeDays: [2]int{14, 28}, EmergeSource: "common", // [common] from memory
		SeedRate: [2]PerThousand{2, 4}, SeedSource: "common", // [common] from memory
		Mow: [2]Inches{2, 3}, MowSource: "common"}, // [common]
	{Name: "seashore paspalum", Season: Warm},
}

// LookupGrass finds a grass by its name, in capitals or not.
func LookupGrass(name string) (Grass, bool) {
	for _, g := range grasses {
		if strings.EqualFold(g.Name, name) {
			return g, true
		}
	}
	return Grass{}, false
}

// GrassNames lists the grasses, cool-season first.
func GrassNames() []string {
	names := make([]string, len(grasses))
	for i, g := range grasses {
		names[i] = g.Name
	}
	return names
}

// OverseedRate is the seed for thickening a standing lawn: half of what bare
// soil takes.
func OverseedRate(bare PerThousand) PerThousand { return bare * 0.5 } // [unl-renovate]
