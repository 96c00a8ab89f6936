package agronomy

import (
	"fmt"
	"strconv"
	"strings"

	"swardbook/climate"
)

// materialChecks answers the checks of this part by method.
var materialChecks = map[string]func(inputs) (out, error){
	"water.gallons": func(in inputs) (out, error) {
		g, err := WaterVolume(Inches(in.num("inches")), SquareFeet(in.num("area_sqft")))
		return out{"gallons": float64(g)}, err
	},
	"water.minutes": func(in inputs) (out, error) {
		m, err := WaterMinutes(Inches(in.num("inches")), InchesPerHour(in.num("inches_per_hour")))
		return out{"minutes": m}, err
	},
	"water_in.potassium_needed": func(in inputs) (out, error) {
		return out{"needed": PotassiumWantsWater(PerThousand(in.num("k_lb_per_1000sqft")), in.str("cut") == "close")}, nil
	},
	"application.half_rate": func(in inputs) (out, error) {
		if in.num("passes") != 2 {
			return nil, fmt.Errorf("only two passes are set out")
		}
		s, err := SpreadOver(PerThousand(in.num("n_lb_per_1000sqft")), 1000, 0)
		return out{"n_lb_per_pass": float64(s.HalfRate)}, err
	},
	"application.drop_calibration": func(in inputs) (out, error) {
		r, err := DropCalibration(Pounds(in.num("caught_lb")), SquareFeet(in.num("area_sqft")))
		return out{"lb_per_1000sqft": float64(r)}, err
	},
	"application.rotary_distance": func(in inputs) (out, error) {
		d, err := RotaryDistance(climate.Feet(in.num("swath_ft")))
		return out{"walk_ft_for_1000sqft": float64(d)}, err
	},
	"application.tank_fills": func(in inputs) (out, error) {
		f, err := TankFills(SquareFeet(in.num("area_sqft")), Gallons(in.num("tank_gal")), SquareFeet(in.num("sqft_per_gal")))
		return out{"fills": float64(f.Count), "last_fill_gal": float64(f.Last)}, err
	},
	"materials.packs": func(in inputs) (out, error) {
		a := DoseOf(Material{Pack: Pounds(in.num("pack_lb"))}, PerThousand(in.num("rate_lb_per_1000sqft"))).For(SquareFeet(in.num("area_sqft")))
		return out{"total_lb": float64(a.Weight), "packs": a.Packs}, nil
	},
	"fertilizer.slow_share": func(in inputs) (out, error) {
		s, err := SlowShareFrom(Percent(in.num("total_n_percent")), Percent(in.num("slow_n_percent")))
		return out{"share": s}, err
	},
	"fertilizer.rate_for_n": func(in inputs) (out, error) {
		d, err := DoseFor(labelled(in.str("analysis")), Wants{N: PerThousand(in.num("n_lb_per_1000sqft"))}, NoCaps())
		return out{"lb_per_1000sqft": float64(d.Rate), "p2o5_lb": float64(d.P2O5), "k2o_lb": float64(d.K2O),
			"total_lb": float64(d.For(SquareFeet(in.numOr("area_sqft", 1000))).Weight)}, err
	},
	"fertilizer.rate_for_total_n": func(in inputs) (out, error) {
		d, err := DoseFor(Material{Analysis: Analysis{N: Percent(in.num("percent"))}}, Wants{N: PerThousand(in.num("n_lb"))}, NoCaps())
		return out{"lb": float64(d.Rate)}, err
	},
	"fertilizer.for_p2o5": func(in inputs) (out, error) {
		d, err := DoseFor(Material{Analysis: Analysis{P2O5: Percent(in.num("percent"))}}, Wants{P2O5: PerThousand(in.num("p2o5_lb"))}, NoCaps())
		return out{"lb": float64(d.Rate)}, err
	},
	"fertilizer.in_bag": func(in inputs) (out, error) {
		w := labelled(in.str("analysis")).InPack(Pounds(in.num("bag_lb")))
		return out{"n_lb": float64(w.N), "p2o5_lb": float64(w.P2O5), "k2o_lb": float64(w.K2O)}, nil
	},
	"fertilizer.in_rate": func(in inputs) (out, error) {
		d := DoseOf(labelled(in.str("analysis")), PerThousand(in.num("lb_per_1000sqft")))
		return out{"n_lb": float64(d.N), "p2o5_lb": float64(d.P2O5), "k2o_lb": float64(d.K2O)}, nil
	},
	"fertilizer.two_starters": func(in inputs) (out, error) {
		d, err := DoseFor(labelled(in.str("analysis")), Wants{N: PerThousand(in.num("n_lb_each"))}, NoCaps())
		n := in.num("applications")
		return out{"p2o5_lb": n * float64(d.P2O5), "k2o_lb": n * float64(d.K2O)}, err
	},
	"fertilizer.limited_rate": func(in inputs) (out, error) {
		c := NoCaps()
		c.N = PerThousand(in.num("n_cap_lb"))
		d, err := DoseFor(labelled(in.str("analysis")), Wants{P2O5: PerThousand(in.num("p2o5_need_lb")), K2O: PerThousand(in.num("k2o_need_lb"))}, c)
		return out{"lb_per_1000sqft": float64(d.Rate), "bound_by": d.BoundBy, "n_lb": float64(d.N), "k2o_left_lb": float64(d.Under.K2O)}, err
	},
	"fertilizer.n_per_gal": func(in inputs) (out, error) {
		n, err := NPerGallon(Percent(in.num("percent")), PoundsPerGallon(in.num("lb_per_gal")))
		return out{"n_lb_per_gal": float64(n)}, err
	},
	"fertilizer.n_from_gallons": func(in inputs) (out, error) {
		n, err := NPerGallon(Percent(in.num("percent")), PoundsPerGallon(in.num("lb_per_gal")))
		return out{"n_lb_per_acre": float64(n) * in.num("gal_per_acre")}, err
	},
	"fertilizer.liquid_rate": func(in inputs) (out, error) {
		m := labelled(in.str("analysis"))
		m.Liquid, m.Density = true, PoundsPerGallon(in.num("lb_per_gal"))
		d, err := DoseFor(m, Wants{N: PerThousand(in.num("n_lb_per_1000sqft"))}, NoCaps())
		return out{"gal_per_1000sqft": float64(d.Gallons), "total_gal": float64(d.For(SquareFeet(in.num("area_sqft"))).Volume)}, err
	},
	"nitrogen.starter_rate": func(in inputs) (out, error) {
		d, err := StarterDose(labelled(in.str("analysis")), PerThousand(in.num("n_cap_lb")), PerThousand(in.num("p2o5_min_lb")), 1.5)
		return out{"lb_per_1000sqft": float64(d.Rate)}, err
	},
	"nitrogen.single_cap_maryland": func(in inputs) (out, error) {
		total := Percent(in.num("total_n_percent"))
		share, err := SlowShareFrom(total, Percent(in.num("slow_n_percent")))
		if err != nil {
			return nil, err
		}
		d, err := DoseFor(Material{Analysis: Analysis{N: total}, SlowShare: share}, Wants{N: 5},
			Caps{N: 0.9, SolubleN: 0.7, P2O5: -1, K2O: -1}) // [md-ag-6-224]
		return out{"lb_per_1000sqft": float64(d.Rate), "bound_by": strings.TrimSuffix(d.BoundBy, " N")}, err
	},
}

// labelled is a fertilizer with nothing known but its analysis.
func labelled(analysis string) Material {
	var p [3]Percent
	for i, s := range strings.Split(analysis, "-") {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			panic(err)
		}
		p[i] = Percent(x)
	}
	return Material{ID: analysis, Name: analysis, Kind: FertilizerMaterial, Analysis: Analysis{p[0], p[1], p[2]}}
}
