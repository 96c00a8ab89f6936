package soil

import (
	"fmt"

	"swardbook/agronomy"
)

// Sampling is how to take a soil sample.
type Sampling struct {
	Depth     agronomy.Inches
	Cores     int
	RetestIn  int               // years until the next, where nothing was limed
	AfterLime [2]int            // months after lime at which a retest tells
	Steps     []agronomy.Reason // what to do
	Why       []agronomy.Reason // what depth and season follow from
}

// Where texts differ (3 to 6 in, 6 to 20 cores, every 1 to 5 years), this is
// the middle, and most name it.
const (
	sampleDepth  agronomy.Inches = 4  // [nc-sampling], [vt-452-125], [purdue-sampling], [ar-lime]
	sampleCores                  = 12 // [ar-lime]
	seedbedDepth agronomy.Inches = 6  // [ksu-mf2311] tillage depth 4-6 in; [cornell-sampling] 6-10
)

// HowToSample gives the way to sample established turf, or a seedbed about to
// be tilled.
func HowToSample(seedbed bool) Sampling {
	s := Sampling{
		Depth: sampleDepth, Cores: sampleCores,
		RetestIn:  3,             // [psu-report-notes], [vt-fall-2008]
		AfterLime: [2]int{6, 12}, // [psu-report-notes]
	}
	depth := agronomy.Reason{Text: "Published depths run from 2 to 6 in; what matters is that each sample and each retest goes to the same one.",
		Source: "nc-sampling, mo-sampling, cornell-sampling, purdue-sampling, vt-452-125, csu-sampling, ar-lime, ksu-mf2311, purdue-ay18, wsu-fs058e"}
	if seedbed {
		s.Depth = seedbedDepth
		s.RetestIn = 1 // [common] a new lawn after its first year
		depth = agronomy.Reason{Text: "A seedbed is sampled to the depth it will be tilled.", Source: "cornell-sampling, ksu-mf2311"}
	}
	s.Steps = []agronomy.Reason{
		{Text: fmt.Sprintf("Take about %d cores to %s from all over the area and mix them in a clean plastic pail; a zinc pail spoils the reading.", s.Cores, s.Depth), Source: "ar-lime, cornell-sampling"},
		{Text: "Leave thatch and leaves out, and let the mix dry in the air.", Source: "cornell-sampling"},
		{Text: "Keep apart what differs in soil, slope, past treatment or looks: front from back, good from poor.", Source: "cornell-sampling, vt-452-125"},
		{Text: "Come back in the same season, with the soil about as moist, and to the same laboratory, so that reports can be compared.", Source: "purdue-sampling"},
	}
	s.Why = []agronomy.Reason{
		depth,
		{Text: "Sample two to three months before you mean to fertilize; autumn and winter are quieter at the laboratory.", Source: "nc-sampling, mo-sampling"},
	}
	return s
}
