package material

import (
	"fmt"

	"swardbook/agronomy"
)

// Cautions gives what goes with a material put down for a use: each once, in
// the order a person needs it, from reading the label to keeping people off.
// The label overrides all of it.
func Cautions(m Material, use Use) []agronomy.Reason {
	out := make([]agronomy.Reason, 0, 12)
	say := func(source string, texts ...string) {
		for _, t := range texts {
			out = append(out, agronomy.Reason{Text: t, Source: source})
		}
	}
	say("common", "Read the label first; where it says otherwise, it counts.")
	switch {
	case m.Kind == LimeMaterial && m.Hydrated:
		say("common",
			"Caustic: it burns wet skin, eyes and lungs. Wear goggles, gloves, long sleeves and a respirator.",
			"It burns leaves and easily overshoots the pH; ground limestone is the better choice for a lawn.")
	case m.Kind == LimeMaterial:
		say("common",
			"Lime dust irritates eyes and lungs: gloves and eye protection, a dust mask with powder.",
			"Wash it off the leaves.")
	case m.Kind == WoodAsh:
		say("common", "Wood ash is caustic dust: gloves, eye protection and a dust mask; only cold ash of clean wood.")
		say("common", "Never on seedlings or germinating seed.")
	case m.Kind == SulfurMaterial:
		say("common", "Sulfur dust irritates eyes and lungs and can catch fire: goggles, gloves, dust mask, no sparks.")
		_, heat, _ := m.HeatLimit()
		out = append(out, heat)
		say("common", "Water it in at once.")
	case m.Kind == GypsumMaterial:
		say("common", "Gypsum dust irritates eyes and lungs: gloves, and a dust mask with powder.", "It helps only where water drains through and carries the sodium away.")
	case m.Kind == MagnesiumMaterial:
		say("common", "Mild irritant: gloves.")
	case m.Kind == IronMaterial:
		say("common",
			"Iron salts irritate skin and eyes: gloves and eye protection, old clothes.",
			"Iron stains paving, stone, siding, shoes and clothes rust-brown at once and for good: keep it off them.",
			"Never in one tank with a weed killer; keep some days between the two.",
			"Spray when the air is still, so that none drifts.",
			"It blackens moss and may darken the grass for some days.")
		_, heat, _ := m.HeatLimit()
		out = append(out, heat)
	default:
		say("common", fertilizerCautions(m)...)
		if _, heat, ok := m.HeatLimit(); ok {
			out = append(out, heat)
		}
		if use == ForStarter {
			say("common", "On a seedbed water lightly and often; a hard watering washes seed together.")
		}
	}
	say("common", offUntil(m))
	if m.Kind == FertilizerMaterial || m.Kind == "" {
		say("purdue-p", "Leave a strip untreated beside water; nothing of it goes down a drain.")
		say("common", "Local codes may add closed dates or wider strips: ask the town or the extension office.")
	} else {
		say("common", "Keep it out of water, wells and drains.")
	}
	switch {
	case m.Kind == IronMaterial: // said above
	case m.Sprayed():
		say("common", "Keep the spray off paving; rinse what falls on it back onto the turf.", "Never in one tank with a weed killer, unless both labels allow it.")
	default:
		say("purdue-p", "Sweep it off paving back onto the turf.")
	}
	if limit, why, ok := m.ProductCap(); ok {
		out = append(out, agronomy.Reason{Text: fmt.Sprintf("No more than %s lb of it per 1000 sq ft at a time.", agronomy.Figure(limit)), Source: why.Source})
	}
	return out
}

// offUntil says how long children and pets stay off.
func offUntil(m Material) string {
	switch {
	case m.Kind == LimeMaterial && m.Hydrated:
		return "Keep children, pets and everybody else off until it is watered in and settled."
	case m.Sprayed():
		return "Keep children and pets off until the leaves are dry."
	}
	return "Keep children and pets off until it is watered in and dry."
}

// fertilizerCautions are the hazards of a fertilizer by what it carries.
func fertilizerCautions(m Material) []string {
	var out []string
	if m.Liquid {
		out = append(out,
			"Wear gloves and eye protection; it is a salt and corrodes metal: rinse the sprayer.",
			"Spray when the air is still, so that none drifts.",
			fmt.Sprintf("Left on the leaf, no more than %s lb of nitrogen per 1000 sq ft.", agronomy.Figure(FoliarN)))
	} else {
		out = append(out, "Wear gloves; spread on dry leaves, then water.")
	}
	if m.Analysis == (agronomy.Analysis{N: 34}) {
		out = append(out, "Ammonium nitrate feeds fire: keep it from fuel and oil. Its sale may be controlled.")
	}
	if m.Analysis.P2O5 > 0 {
		out = append(out, "Phosphorus feeds algae: none on paving or in water.")
	}
	if m.Analysis.K2O > 0 {
		out = append(out, "Potassium is a salt: no more than 1 lb K₂O per 1000 sq ft at once.")
	}
	return out
}

// WeatherCautions gives what the day must be like for a material.
func WeatherCautions(m Material) []agronomy.Reason {
	out := []agronomy.Reason{
		{Text: "Not on frozen, snow-covered or saturated ground; wait until frost is off the leaves.", Source: "common"},
	}
	switch {
	case m.Sprayed():
		out = append(out, agronomy.Reason{Text: "Not in wind above 10 mph (16 km/h): spray drifts.", Source: "common"})
	case m.Kind == LimeMaterial, m.Kind == WoodAsh, m.Kind == SulfurMaterial, m.Kind == GypsumMaterial:
		out = append(out, agronomy.Reason{Text: "Not in wind above 10 mph (16 km/h): dust drifts.", Source: "common"})
	}
	if m.Kind == FertilizerMaterial || m.Kind == MagnesiumMaterial {
		out = append(out,
			HeavyRain(),
			agronomy.Reason{Text: "Not on dormant or wilted turf: water dry soil slowly first.", Source: "umn-2023"})
	}
	return out
}

// HeavyRain is the caution about the rain of a day, on its own for those who say
// in another place what to do if it comes.
func HeavyRain() agronomy.Reason {
	return agronomy.Reason{Text: "Not if 1 in (25 mm) of rain or more is forecast within 24 hours; 0.1 to 0.5 in (3 to 13 mm) is welcome.", Source: "common"}
}

// StorageRules gives how to keep what is left over.
func StorageRules() []agronomy.Reason {
	return []agronomy.Reason{
		{Text: "Keep leftovers dry and off the concrete, in their bag with its label, never in food containers.", Source: "common"},
		{Text: "Keep them away from children, pets, feed and fuel; sulfur, nitrates and weed killers apart from each other.", Source: "common"},
		{Text: "Use leftovers at the label's rate or give them away; never to a drain.", Source: "common"},
		{Text: "Fill spreaders and sprayers far from a well (50 ft, 15 m, or more).", Source: "common"},
	}
}
