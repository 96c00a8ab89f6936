package schedule

import (
	"swardbook/agronomy"
)

// Supply is one material over the whole program: what it takes, what is there,
// what to buy by when, and what is left over.
type Supply struct {
	Material string           `json:"material"`
	Name     string           `json:"name"`
	Pounds   agronomy.Pounds  `json:"amount_lb"`
	Gallons  agronomy.Gallons `json:"amount_gal"`
	Packs    float64          `json:"packs"`
	PackSize string           `json:"pack_size,omitzero"`
	OnHand   float64          `json:"on_hand_packs"`
	Buy      int              `json:"buy_packs"`
	By       Date             `json:"by,omitzero"` // first job that runs short
	Cost     float64          `json:"cost"`
	Priced   bool             `json:"priced"`
	Left     float64          `json:"left_packs"`
	Uses     []Use            `json:"uses"`
	Note     string           `json:"note,omitzero"` // why a material in the shed is not used
}

// Use is one job's part of a material.
type Use struct {
	Job    string          `json:"job"`
	Date   Date            `json:"date"`
	Pounds agronomy.Pounds `json:"amount_lb"`
	Packs  float64         `json:"packs"`
}
