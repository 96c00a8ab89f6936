package schedule

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

func TestKindInJSON(t *testing.T) {
	text, err := json.Marshal([]Kind{LateNitrogen, {}})
	if err != nil || string(text) != `["late-nitrogen",""]` {
		t.Errorf("%s, %v", text, err)
	}
	var k Kind
	if err := json.Unmarshal([]byte(`"late-nitrogen"`), &k); err != nil || k != LateNitrogen {
		t.Errorf("read as %q, %v", k, err)
	}
	if err := json.Unmarshal([]byte(`"mow"`), &k); err == nil {
		t.Error("an unknown kind was read")
	}
}

func TestMaterialsServeKinds(t *testing.T) {
	materials := map[string]material.Material{
		"limestone": {Kind: material.LimeMaterial, Magnesium: 11},
		"sulfur":    {Kind: material.SulfurMaterial, Sulfur: 90},
		"24-2-0":    {Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, P2O5: 2}},
		"0-0-50":    {Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{K2O: 50}},
		"epsom":     {Kind: material.MagnesiumMaterial, Magnesium: 9.86},
	}
	want := map[Kind][]string{
		SoilTest: nil, Sow: nil, LastSafe: nil, Reopen: nil, {}: nil,
		Starter: {"24-2-0"}, Phosphorus: {"24-2-0"}, Nitrogen: {"24-2-0"}, LateNitrogen: {"24-2-0"},
		Lime: {"limestone"}, Sulfur: {"sulfur"}, Potassium: {"0-0-50"}, Magnesium: {"epsom"},
	}
	for k, names := range want {
		for name, m := range materials {
			if got := k.ServedBy(m); got != slices.Contains(names, name) {
				t.Errorf("%s serves %q: %t", name, k, got)
			}
		}
	}
}

func TestLeavingOutCostsMoreThanAnyPlacing(t *testing.T) {
	var below int64 // one job of each kind below
	for rank := MostKinds - 1; rank >= 0; rank-- {
		cost := LeaveOut(rank)
		if cost <= below {
			t.Errorf("rank %d does not outweigh one of each kind below it", rank)
		}
		if rank < MostKinds-1 && cost <= 2*LeaveOut(rank+1) {
			t.Errorf("rank %d does not outweigh two of rank %d", rank, rank+1)
		}
		below += cost
	}
	if least := LeaveOut(MostKinds - 1); least < 999*perUnit {
		t.Errorf("the least costs %d", least)
	}
	if most := LeaveOut(0); most > math.MaxInt64/8/200 {
		t.Error("200 jobs left out pass what place adds up")
	}
}
