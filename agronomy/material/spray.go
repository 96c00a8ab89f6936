package material

import (
	"fmt"
	"math"

	"swardbook/agronomy"
)

// Fills is how a sprayer's tank covers an area.
type Fills struct {
	Count   int                 // tank fills, the last one part full
	Full    agronomy.Gallons    // spray in each fill but the last
	Last    agronomy.Gallons    // spray in the last fill
	Covers  agronomy.SquareFeet // area one full tank covers
	Product agronomy.Gallons    // of the product in a full tank; 0 without a dose
	InLast  agronomy.Gallons    // of the product in the last fill
	Steps   []agronomy.Reason
}

// TankFills counts the fills for an area with a tank, at so many square feet
// to a gallon of spray.
func TankFills(area agronomy.SquareFeet, tank agronomy.Gallons, perGallon agronomy.SquareFeet) (Fills, error) {
	if !(area > 0) || !(tank > 0) || !(perGallon > 0) {
		return Fills{}, fmt.Errorf("%s sq ft from a tank of %s gal at %s sq ft per gal: give amounts above 0; spray water on 1000 sq ft to find the last", agronomy.Figure(area), agronomy.Figure(tank), agronomy.Figure(perGallon))
	}
	covers := perGallon * agronomy.SquareFeet(tank)
	n := math.Max(1, math.Ceil(float64(area/covers)-1e-9))
	if n > maxFills {
		return Fills{}, fmt.Errorf("%s sq ft takes more than %d fills of %s gal: take a larger sprayer, or a granular material", agronomy.Figure(area), maxFills, agronomy.Figure(tank))
	}
	f := Fills{Count: int(n), Full: tank, Covers: covers}
	f.Last = agronomy.Gallons((float64(area) - (n-1)*float64(covers)) / float64(perGallon))
	if f.Count == 1 {
		f.Full = f.Last
	}
	return f, nil
}

// maxFills is more fills than anybody carries in a day. [common]
const maxFills = 1000

// Spray sets out a liquid dose on an area with a sprayer: the fills, and the
// product in each.
func (d Dose) Spray(area agronomy.SquareFeet, tank agronomy.Gallons, perGallon agronomy.SquareFeet) (Fills, error) {
	if d.Gallons <= 0 {
		return Fills{}, fmt.Errorf("%s is not dosed in gallons: a liquid with a density is needed", d.Material.Title())
	}
	f, err := TankFills(area, tank, perGallon)
	if err != nil {
		return Fills{}, err
	}
	per := d.Gallons * agronomy.Gallons(perGallon/1000) // of product in a gallon of spray
	if per > 1 {
		return Fills{}, fmt.Errorf("%s gal of %s is wanted in each gallon of spray: spray more gallons on the same area, so that the mix holds water too", agronomy.Figure(per), d.Material.Title())
	}
	f.Product, f.InLast = per*f.Full, per*f.Last
	f.Steps = []agronomy.Reason{
		{Text: fmt.Sprintf("%s gal (%s fl oz, %s L) of product per 1000 sq ft, at %s sq ft to a gallon of spray.",
			agronomy.Figure(d.Gallons), agronomy.Figure(d.Gallons*FluidOuncesPerGallon), agronomy.Figure(d.Gallons.Liters()), agronomy.Figure(perGallon))},
	}
	if f.Count > 1 {
		f.Steps = append(f.Steps, agronomy.Reason{Text: fmt.Sprintf("%d full tanks: %s fl oz (%s L) of product in %s gal of spray each.",
			f.Count-1, agronomy.Figure(f.Product*FluidOuncesPerGallon), agronomy.Figure(f.Product.Liters()), agronomy.Figure(f.Full))})
	}
	f.Steps = append(f.Steps,
		agronomy.Reason{Text: fmt.Sprintf("Last tank: %s fl oz (%s L) of product, filled up to %s gal (%s L).",
			agronomy.Figure(f.InLast*FluidOuncesPerGallon), agronomy.Figure(f.InLast.Liters()), agronomy.Figure(f.Last), agronomy.Figure(f.Last.Liters()))},
		agronomy.Reason{Text: "Half the water first, then the product while stirring, then the rest; use the rinse water on the same area.", Source: "common"},
	)
	return f, nil
}
