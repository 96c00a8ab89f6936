package check

import (
	"fmt"
	"strings"

	"swardbook/agronomy"
	aglime "swardbook/agronomy/lime"
	"swardbook/agronomy/nutrient"
	agsoil "swardbook/agronomy/soil"
)

// symbolNutrient reads the chemist's symbol of the checks.
func symbolNutrient(s string) agronomy.Nutrient {
	n, ok := agsoil.Symbols[strings.ToLower(s)]
	if !ok {
		panic("no nutrient " + s)
	}
	return n
}

// checkSeason reads the season of the checks.
func checkSeason(s string) agronomy.Season {
	if s == "warm" {
		return agronomy.Warm
	}
	return agronomy.Cool
}

// reportOf is a report with one reading.
func reportOf(n agronomy.Nutrient, ppm agronomy.PPM, method agronomy.Extractant, texture agronomy.Texture) agronomy.Report {
	r := agronomy.Report{Method: method, Texture: texture}
	reading := agronomy.Reading{Given: true, PPM: ppm}
	switch n {
	case agronomy.Phosphorus:
		r.Phosphorus = reading
	case agronomy.Potassium:
		r.Potassium = reading
	default:
		panic("no reading of " + n)
	}
	return r
}

// inOptimum is where a reading stands against an optimum, in the checks' words.
func inOptimum(ppm, low, high agronomy.PPM) string {
	switch {
	case ppm < low:
		return "low"
	case ppm <= high:
		return "optimum"
	}
	return "above optimum"
}

var soilChecks = map[string]func(inputs) (out, error){
	"convert.p_to_p2o5": func(in inputs) (out, error) { return out{"p2o5_lb": in.num("p_lb") * agronomy.P2O5PerP}, nil },
	"convert.k2o_to_k":  func(in inputs) (out, error) { return out{"k_lb": in.num("k2o_lb") * agronomy.KPerK2O}, nil },
	"convert.k_to_k2o":  func(in inputs) (out, error) { return out{"k2o_lb": in.num("k_lb") * agronomy.K2OPerK}, nil },
	"convert.p2o5_to_p": func(in inputs) (out, error) {
		r, err := agsoil.ParseReading(agronomy.Phosphorus, fmt.Sprintf("%g ppm P2O5", in.num("p2o5_ppm")), 4, 0)
		return out{"p_ppm": float64(r.PPM)}, err
	},
	"convert.ton_per_acre_to_lb_per_1000sqft": func(in inputs) (out, error) {
		return out{"lb_per_1000sqft": float64(agronomy.TonsPerAcre(in.num("ton_per_acre")).PerThousand())}, nil
	},
	"convert.kg_per_ha_to_lb_per_1000sqft": func(in inputs) (out, error) {
		r, err := agronomy.ParseRate(fmt.Sprintf("%g kg/ha", in.num("kg_per_ha")))
		return out{"lb_per_1000sqft": float64(r)}, err
	},
	"convert.g_per_m2_to_lb_per_1000sqft": func(in inputs) (out, error) {
		r, err := agronomy.ParseRate(fmt.Sprintf("%g g/m2", in.num("g_per_m2")))
		return out{"lb_per_1000sqft": float64(r)}, err
	},
	"convert.lb_per_acre_to_g_per_m2": func(in inputs) (out, error) {
		return out{"g_per_m2": agronomy.PerAcre(in.num("lb_per_acre")).PerThousand().GramsPerM2()}, nil
	},
	"convert.ppm_to_lb_per_1000sqft": func(in inputs) (out, error) {
		ppm := agronomy.PPM(in.num("ppm"))
		if _, plough := in["lb_soil_per_acre"]; plough {
			return out{"lb_per_1000sqft": float64(ppm.InPloughLayer())}, nil
		}
		soil := in.num("lb_soil_per_acre_inch") * in.num("depth_in")
		if soil == agronomy.SoilPerAcreInch*in.num("depth_in") {
			return out{"lb_per_1000sqft": float64(ppm.In(agronomy.Inches(in.num("depth_in"))))}, nil
		}
		return out{"lb_per_1000sqft": float64(ppm.InSoil(soil))}, nil
	},
	"convert.meq_per_100g_to_ppm": func(in inputs) (out, error) {
		r, err := agsoil.ParseReading(symbolNutrient(in.str("cation")), fmt.Sprintf("%g meq/100 g", in.num("meq_per_100g")), 4, 0)
		return out{"ppm": float64(r.PPM)}, err
	},
	"convert.lb_per_acre_to_meq_per_100g": func(in inputs) (out, error) {
		n := symbolNutrient(in.str("cation"))
		r, err := agsoil.ParseReading(n, fmt.Sprintf("%g lb/acre", in.num("lb_per_acre")), 0, 0)
		w, _ := agronomy.MeqWeight(n)
		return out{"meq_per_100g": float64(r.PPM / w)}, err
	},
	"convert.k_kg_ha_to_k2o_lb_per_1000sqft": func(in inputs) (out, error) {
		r, err := agronomy.ParseRate(fmt.Sprintf("%g kg/ha", in.num("k_kg_ha")))
		return out{"k2o_lb_per_1000sqft": float64(r) * agronomy.K2OPerK}, err
	},
	"soil.base_saturation": func(in inputs) (out, error) {
		o := out{}
		for sym, n := range map[string]agronomy.Nutrient{"k": agronomy.Potassium, "ca": agronomy.Calcium, "mg": agronomy.Magnesium} {
			share, ok := agsoil.Saturation(n, agronomy.PPM(in.num(sym+"_ppm")), agronomy.Meq(in.num("cec_meq_per_100g")))
			if !ok {
				return nil, fmt.Errorf("no saturation of %s", n)
			}
			o[sym+"_percent"] = float64(share)
		}
		return o, nil
	},
	"soil.level_slan": func(in inputs) (out, error) {
		n, m, tex := symbolNutrient(in.str("nutrient")), agronomy.Extractant(in.str("extractant")), agronomy.Texture(in.strOr("texture", ""))
		l := agsoil.LevelIn(reportOf(n, agronomy.PPM(in.num("ppm")), m, tex), n, "")
		// The published scale has three words; very low is low on it.
		word := strings.TrimPrefix(string(l), "very ")
		return out{"level": word}, nil
	},
	"soil.level_rutgers": func(in inputs) (out, error) {
		l, ok := agsoil.Rutgers(symbolNutrient(in.str("nutrient")), agronomy.PerAcre(in.num("lb_per_acre")))
		if !ok {
			return nil, fmt.Errorf("no class")
		}
		return out{"level": string(l)}, nil
	},
	"soil.level_georgia": func(in inputs) (out, error) {
		texture := map[string]agronomy.Texture{"coastal": agronomy.Sand, "piedmont": agronomy.Clay}[in.str("region")]
		n := symbolNutrient(in.str("nutrient"))
		l := agsoil.LevelIn(reportOf(n, agronomy.PPM(in.num("lb_per_acre")/2), agronomy.Mehlich1, texture), n, "GA")
		return out{"level": string(l)}, nil
	},
	"soil.psu_p_advised": func(in inputs) (out, error) {
		return out{"advised": agsoil.PennStateAdvisesP(agronomy.PPM(in.num("p_mehlich3_ppm")), in.str("use") == "green")}, nil
	},
	"soil.mlsn_below": func(in inputs) (out, error) {
		below := []any{}
		for _, sym := range []string{"K", "P", "Ca", "Mg", "S"} {
			floor, ok := agsoil.MLSN(symbolNutrient(sym), agronomy.Mehlich3)
			if !ok {
				return nil, fmt.Errorf("no floor for %s", sym)
			}
			if agronomy.PPM(in.num(strings.ToLower(sym)+"_ppm")) < floor {
				below = append(below, sym)
			}
		}
		return out{"below": below}, nil
	},
	"soil.need_found_wanted": func(in inputs) (out, error) {
		n := nutrient.FromOptimum(symbolNutrient(in.str("nutrient")), agronomy.PPM(in.num("found_ppm")), agronomy.PPM(in.num("wanted_ppm")), agronomy.Inches(in.num("depth_in")))
		return out{"p2o5_lb_per_1000sqft": float64(n)}, nil
	},
	"soil.michigan_report": func(in inputs) (out, error) {
		// That laboratory draws P with Bray-1 and K with ammonium acetate.
		r := agronomy.Report{Method: agronomy.Bray1, Texture: agronomy.Texture(in.str("texture")), PH: agronomy.PH(in.num("ph")), Depth: 4,
			Phosphorus: agronomy.Reading{Given: true, PPM: agronomy.PPM(in.num("p_ppm"))}, Potassium: agronomy.Reading{Given: true, PPM: agronomy.PPM(in.num("k_ppm"))}, CEC: 20.2}
		p, err := nutrient.PhosphorusNeed(r, "MI", false)
		if err != nil {
			return nil, err
		}
		k, err := nutrient.PotassiumNeed(r, "MI", false)
		if err != nil {
			return nil, err
		}
		grass, _ := agronomy.LookupGrass("kentucky bluegrass")
		target, low, _ := agronomy.Stand{{Grass: grass, Percent: 100}}.TargetPH()
		lime := 0.0
		if r.PH < low {
			need, err := aglime.Requirement(aglime.Case{PH: r.PH, Target: target, Texture: r.Texture, State: "MI", Depth: 4})
			if err != nil {
				return nil, err
			}
			lime = float64(need.Rate)
		}
		return out{"p2o5_lb_per_1000sqft": float64(p.Year), "k2o_lb_per_1000sqft": float64(k.Year), "lime_lb_per_1000sqft": lime}, nil
	},
	"soil.michigan_need": func(in inputs) (out, error) {
		p, _ := nutrient.MichiganP2O5(agronomy.PPM(in.num("p_ppm")))
		k, _ := nutrient.MichiganK2O(agronomy.PPM(in.num("k_ppm")))
		return out{"p2o5_lb": float64(p), "k2o_lb": float64(k)}, nil
	},
	"soil.michigan_p_line": func(in inputs) (out, error) {
		p, _ := nutrient.MichiganP2O5(agronomy.PPM(in.num("p_ppm")))
		return out{"p2o5_lb": float64(p)}, nil
	},
	"soil.gypsum_for_na": func(in inputs) (out, error) {
		return out{"lb_per_1000sqft": float64(agsoil.GypsumFor(agronomy.Meq(in.num("na_excess_meq_per_100g")), agronomy.Inches(in.num("depth_in"))))}, nil
	},
	"soil.p_enough_washington": func(in inputs) (out, error) {
		advised, ok := agsoil.WashingtonAdvisesP(agronomy.PPM(in.num("p_ppm")), agronomy.Extractant(in.str("extractant")))
		if !ok {
			return nil, fmt.Errorf("no figure for that extractant")
		}
		return out{"p_advised": advised}, nil
	},
	"soil.level_new_hampshire": func(in inputs) (out, error) {
		low, high, ok := agsoil.NewHampshire(symbolNutrient(in.str("nutrient")))
		if !ok {
			return nil, fmt.Errorf("no band")
		}
		return out{"level": inOptimum(agronomy.PPM(in.num("ppm")), low, high)}, nil
	},
	"soil.k_optimum_by_cec": func(in inputs) (out, error) {
		low, high, _ := agsoil.NebraskaOptimum(agronomy.Potassium, agronomy.Meq(in.num("cec")))
		return out{"level": inOptimum(agronomy.PPM(in.num("k_ppm")), low, high)}, nil
	},
	"soil.level_modified_morgan": func(in inputs) (out, error) {
		low, high, ok := agsoil.ModifiedMorganOptimum(symbolNutrient(in.str("nutrient")))
		if !ok {
			return nil, fmt.Errorf("no band")
		}
		return out{"level": inOptimum(agronomy.PPM(in.num("ppm")), low, high)}, nil
	},
	"nitrogen.growth_potential": func(in inputs) (out, error) {
		s := checkSeason(in.str("season"))
		if _, celsius := in["mean_c"]; celsius {
			return out{"gp": nutrient.GrowthPotentialC(in.num("mean_c"), s)}, nil
		}
		return out{"gp": nutrient.GrowthPotentialF(in.num("mean_f"), s)}, nil
	},
	"nitrogen.late_rate_range": func(in inputs) (out, error) {
		low, high, _, ok := nutrient.LateCustom(map[string]string{"indiana": "IN"}[in.str("region")])
		if !ok {
			return nil, fmt.Errorf("no custom")
		}
		return out{"low_lb": float64(low), "high_lb": float64(high)}, nil
	},
	"nitrogen.clippings_credit": func(in inputs) (out, error) {
		return out{"year_n_lb": float64(nutrient.ClippingsCredit(agronomy.PerThousand(in.num("year_n_lb_removed")), in.num("share")))}, nil
	},
	"nitrogen.calendar_total": func(in inputs) (out, error) {
		names := map[string]string{"carolina-tall-fescue": "North Carolina, tall fescue"}
		for _, c := range nutrient.PublishedCalendars() {
			if c.Name == names[in.str("calendar")] {
				return out{"year_n_lb": float64(c.Low())}, nil
			}
		}
		return nil, fmt.Errorf("no such calendar")
	},
	"seeding.rate": func(in inputs) (out, error) {
		return out{"lb_per_1000sqft": float64(agronomy.OverseedRate(agronomy.PerThousand(in.num("full_lb_per_1000sqft"))))}, nil
	},
}
