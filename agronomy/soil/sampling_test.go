package soil

import (
	"strings"
	"testing"

	"swardbook/agronomy/check"
)

func TestHowToSample(t *testing.T) {
	lawn, bed := HowToSample(false), HowToSample(true)
	if lawn.Depth != 4 || lawn.Cores != 12 || lawn.RetestIn != 3 || lawn.AfterLime != [2]int{6, 12} {
		t.Errorf("%+v", lawn)
	}
	if bed.Depth != 6 || bed.RetestIn != 1 {
		t.Errorf("%+v", bed)
	}
	if !strings.Contains(lawn.Steps[0].Text, "12 cores to 4 in (10 cm)") {
		t.Error(lawn.Steps[0].Text)
	}
	check.Resolve(t, lawn.Steps)
	check.Resolve(t, bed.Steps)
	check.Resolve(t, lawn.Why)
	check.Resolve(t, bed.Why)
}
