package check

import (
	"fmt"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/climate"
)

// materialChecks answers the checks of this part by method.
var materialChecks = map[string]func(inputs) (out, error){
	"water.gallons": func(in inputs) (out, error) {
		g, err := material.WaterVolume(agronomy.Inches(in.num("inches")), agronomy.SquareFeet(in.num("area_sqft")))
		return out{"gallons": float64(g)}, err
	},
	"water.minutes": func(in inputs) (out, error) {
		m, err := material.WaterMinutes(agronomy.Inches(in.num("inches")), agronomy.InchesPerHour(in.num("inches_per_hour")))
		return out{"minutes": m}, err
	},
	"application.half_rate": func(in inputs) (out, error) {
		if in.num("passes") != 2 {
			return nil, fmt.Errorf("only two passes are set out")
		}
		s, err := material.SpreadOver(agronomy.PerThousand(in.num("n_lb_per_1000sqft")), 1000, 0)
		return out{"n_lb_per_pass": float64(s.HalfRate)}, err
	},
	"application.drop_calibration": func(in inputs) (out, error) {
		r, err := material.DropCalibration(agronomy.Pounds(in.num("caught_lb")), agronomy.SquareFeet(in.num("area_sqft")))
		return out{"lb_per_1000sqft": float64(r)}, err
	},
	"application.rotary_distance": func(in inputs) (out, error) {
		s, err := material.SpreadOver(1, 1000, climate.Feet(in.num("swath_ft")))
		return out{"walk_ft_for_1000sqft": float64(s.Walk)}, err
	},
	"application.tank_fills": func(in inputs) (out, error) {
		f, err := material.TankFills(agronomy.SquareFeet(in.num("area_sqft")), agronomy.Gallons(in.num("tank_gal")), agronomy.SquareFeet(in.num("sqft_per_gal")))
		return out{"fills": float64(f.Count), "last_fill_gal": float64(f.Last)}, err
	},
	"materials.packs": func(in inputs) (out, error) {
		a := material.DoseOf(material.Material{Pack: agronomy.Pounds(in.num("pack_lb"))}, agronomy.PerThousand(in.num("rate_lb_per_1000sqft"))).For(agronomy.SquareFeet(in.num("area_sqft")))
		return out{"total_lb": float64(a.Weight), "packs": a.Packs}, nil
	},
	"fertilizer.rate_for_n": func(in inputs) (out, error) {
		d, err := material.DoseFor(labelled(in.str("analysis")), material.Wants{N: agronomy.PerThousand(in.num("n_lb_per_1000sqft"))}, material.NoCaps())
		return out{"lb_per_1000sqft": float64(d.Rate), "p2o5_lb": float64(d.P2O5), "k2o_lb": float64(d.K2O),
			"total_lb": float64(d.For(agronomy.SquareFeet(in.numOr("area_sqft", 1000))).Weight)}, err
	},
	"fertilizer.rate_for_total_n": func(in inputs) (out, error) {
		d, err := material.DoseFor(material.Material{Analysis: agronomy.Analysis{N: agronomy.Percent(in.num("percent"))}}, material.Wants{N: agronomy.PerThousand(in.num("n_lb"))}, material.NoCaps())
		return out{"lb": float64(d.Rate)}, err
	},
	"fertilizer.for_p2o5": func(in inputs) (out, error) {
		d, err := material.DoseFor(material.Material{Analysis: agronomy.Analysis{P2O5: agronomy.Percent(in.num("percent"))}}, material.Wants{P2O5: agronomy.PerThousand(in.num("p2o5_lb"))}, material.NoCaps())
		return out{"lb": float64(d.Rate)}, err
	},
	"fertilizer.in_bag": func(in inputs) (out, error) {
		w := labelled(in.str("analysis")).InPack(agronomy.Pounds(in.num("bag_lb")))
		return out{"n_lb": float64(w.N), "p2o5_lb": float64(w.P2O5), "k2o_lb": float64(w.K2O)}, nil
	},
	"fertilizer.in_rate": func(in inputs) (out, error) {
		d := material.DoseOf(labelled(in.str("analysis")), agronomy.PerThousand(in.num("lb_per_1000sqft")))
		return out{"n_lb": float64(d.N), "p2o5_lb": float64(d.P2O5), "k2o_lb": float64(d.K2O)}, nil
	},
	"fertilizer.two_starters": func(in inputs) (out, error) {
		d, err := material.DoseFor(labelled(in.str("analysis")), material.Wants{N: agronomy.PerThousand(in.num("n_lb_each"))}, material.NoCaps())
		n := in.num("applications")
		return out{"p2o5_lb": n * float64(d.P2O5), "k2o_lb": n * float64(d.K2O)}, err
	},
	"fertilizer.limited_rate": func(in inputs) (out, error) {
		c := material.NoCaps()
		c.N = agronomy.PerThousand(in.num("n_cap_lb"))
		d, err := material.DoseFor(labelled(in.str("analysis")), material.Wants{P2O5: agronomy.PerThousand(in.num("p2o5_need_lb")), K2O: agronomy.PerThousand(in.num("k2o_need_lb"))}, c)
		return out{"lb_per_1000sqft": float64(d.Rate), "bound_by": d.BoundBy, "n_lb": float64(d.N), "k2o_left_lb": float64(d.Under.K2O)}, err
	},
	"fertilizer.n_per_gal": func(in inputs) (out, error) {
		n, err := nPerGallon(in)
		return out{"n_lb_per_gal": n}, err
	},
	"fertilizer.n_from_gallons": func(in inputs) (out, error) {
		n, err := nPerGallon(in)
		return out{"n_lb_per_acre": n * in.num("gal_per_acre")}, err
	},
	"fertilizer.liquid_rate": func(in inputs) (out, error) {
		m := labelled(in.str("analysis"))
		m.Liquid, m.Density = true, agronomy.PoundsPerGallon(in.num("lb_per_gal"))
		d, err := material.DoseFor(m, material.Wants{N: agronomy.PerThousand(in.num("n_lb_per_1000sqft"))}, material.NoCaps())
		return out{"gal_per_1000sqft": float64(d.Gallons), "total_gal": float64(d.For(agronomy.SquareFeet(in.num("area_sqft"))).Volume)}, err
	},
	"nitrogen.starter_rate": func(in inputs) (out, error) {
		c := material.NoCaps()
		c.N = agronomy.PerThousand(in.num("n_cap_lb"))
		d, err := material.DoseFor(labelled(in.str("analysis")), material.Wants{P2O5: 1.5}, c)
		if float64(d.P2O5) < in.num("p2o5_min_lb") {
			return nil, fmt.Errorf("%v lb P2O5", d.P2O5)
		}
		return out{"lb_per_1000sqft": float64(d.Rate)}, err
	},
	"nitrogen.single_cap_maryland": func(in inputs) (out, error) {
		total := agronomy.Percent(in.num("total_n_percent"))
		share := in.num("slow_n_percent") / float64(total)
		d, err := material.DoseFor(material.Material{Analysis: agronomy.Analysis{N: total}, SlowShare: share}, material.Wants{N: 5},
			material.Caps{N: 0.9, SolubleN: 0.7, P2O5: -1, K2O: -1}) // [md-ag-6-224]
		return out{"lb_per_1000sqft": float64(d.Rate), "bound_by": strings.TrimSuffix(d.BoundBy, " N")}, err
	},
}

// nPerGallon reads the nitrogen of a gallon off a dose of the liquid.
func nPerGallon(in inputs) (float64, error) {
	m := material.Material{Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: agronomy.Percent(in.num("percent"))}, Liquid: true, Density: agronomy.PoundsPerGallon(in.num("lb_per_gal"))}
	d, err := material.DoseFor(m, material.Wants{N: 1}, material.NoCaps())
	return float64(d.N) / float64(d.Gallons), err
}

// labelled makes a material of an analysis, such as "18-24-12".
func labelled(analysis string) material.Material {
	var a agronomy.Analysis
	if _, err := fmt.Sscanf(analysis, "%g-%g-%g", &a.N, &a.P2O5, &a.K2O); err != nil {
		panic(err)
	}
	return material.Material{ID: analysis, Name: analysis, Kind: material.FertilizerMaterial, Analysis: a}
}
