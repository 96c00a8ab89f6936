package check

import (
	"fmt"

	"swardbook/agronomy"
	"swardbook/agronomy/lime"
	"swardbook/agronomy/material"
)

// limeChecks answers the checks of this part by method.
var limeChecks = map[string]func(inputs) (out, error){
	"lime.cce_of": func(in inputs) (out, error) {
		v, ok := lime.CCEOf(in.str("compound"))
		if !ok {
			return nil, fmt.Errorf("unknown compound")
		}
		return out{"cce_percent": float64(v)}, nil
	},
	"lime.caco3_for_acidity": func(in inputs) (out, error) {
		v := lime.ForAcidity(agronomy.Meq(in.num("acidity_meq_per_100g")), agronomy.PerAcre(in.num("lb_soil_per_acre")))
		return out{"lb_per_acre": float64(v)}, nil
	},
	"lime.adjust_for_cce": func(in inputs) (out, error) {
		value := agronomy.Percent(in.num("cce_percent"))
		lawn, err := lime.MaterialRate(agronomy.PerThousand(in.numOr("recommended_lb_per_1000sqft", 0)), value)
		if err != nil {
			return nil, err
		}
		garden, err := lime.MaterialRate(agronomy.PerThousand(10*in.numOr("recommended_lb_per_100sqft", 0)), value)
		return out{"lb_per_1000sqft": float64(lawn), "lb_per_100sqft": float64(garden) / 10}, err
	},
	"lime.enm": func(in inputs) (out, error) {
		fine := in.num("through_60")
		label := []material.Sieve{{Mesh: 8, Passing: agronomy.Percent(100 - in.num("retained_8"))}, {Mesh: 40, Passing: agronomy.Percent(fine + in.num("retained_60"))}, {Mesh: 60, Passing: agronomy.Percent(fine)}}
		v, err := lime.ENM(agronomy.Percent(in.num("cce_percent")), label)
		return out{"enm_lb_per_ton": float64(v)}, err
	},
	"lime.tons_from_enm": func(in inputs) (out, error) {
		v, err := lime.ForENM(agronomy.PerAcre(in.num("enm_wanted_lb_per_acre")), agronomy.Pounds(in.num("enm_lb_per_ton")))
		return out{"tons_per_acre": float64(v)}, err
	},
	"lime.env_new_york": func(in inputs) (out, error) { return stoneBy("New York", "env_percent", in) },
	"lime.ecce_iowa":    func(in inputs) (out, error) { return stoneBy("Iowa", "ecce_percent", in) },
	"lime.rnv_kentucky": func(in inputs) (out, error) { return stoneBy("Kentucky", "rnv_percent", in) },
	"lime.rnv_mississippi": func(in inputs) (out, error) {
		return stoneBy("Mississippi", "rnv_percent", in)
	},
	"lime.enp_minnesota": func(in inputs) (out, error) {
		o, err := stoneBy("Minnesota", "percent", in)
		if err != nil {
			return nil, err
		}
		v, err := lime.ENP(agronomy.Percent(in.num("tnp_percent")), labelOf(in), agronomy.Percent(in.num("moisture_percent")))
		o["enp_lb_per_ton"] = float64(v)
		return o, err
	},
	"lime.fineness_ohio": func(in inputs) (out, error) {
		p60 := in.num("through_60")
		p20 := p60 + in.num("between_20_60")
		r, _ := lime.FinenessRuleOf("Ohio")
		f, err := r.Fineness([]material.Sieve{{Mesh: 8, Passing: agronomy.Percent(p20 + in.num("between_8_20"))}, {Mesh: 20, Passing: agronomy.Percent(p20)}, {Mesh: 60, Passing: agronomy.Percent(p60)}})
		return out{"fineness_percent": float64(f)}, err
	},
	"lime.scale_depth": func(in inputs) (out, error) {
		tons := in.numOr("tons_per_acre", in.numOr("tons_per_acre_8in", 0))
		rate := func(depth string) float64 {
			n, err := lime.Requirement(lime.Case{PH: 5.5, Target: 6.5, Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: 6.3}, CEC: 12, Depth: agronomy.Inches(in.num(depth))})
			if err != nil {
				panic(err)
			}
			return float64(n.Rate)
		}
		return out{"tons_per_acre": tons * rate("depth_in") / rate("table_depth_in")}, nil
	},
	"lime.tristate_other_stone": func(in inputs) (out, error) {
		stone, err := lime.MaterialRate(agronomy.PerThousand(0.9*in.num("tons_per_acre")), agronomy.Percent(in.num("neutralizing_value_percent")))
		return out{"tons_per_acre": float64(stone)}, err
	},
	"lime.sikora_osu2025": func(in inputs) (out, error) {
		v, err := perAcre(lime.Case{PH: 5, Target: agronomy.PH(in.num("target_ph")), Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: agronomy.PH(in.num("buffer_ph"))}, State: "OR", CEC: 12, Depth: 6})
		return out{"tons_per_acre_6in": v / agronomy.PoundsPerTon}, err
	},
	"lime.sikora_osu2025_lawn": func(in inputs) (out, error) {
		n, err := lime.Requirement(lime.Case{PH: 5.5, Target: agronomy.PH(in.num("target_ph")), Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: agronomy.PH(in.num("buffer_ph"))}, State: "OR", CEC: 12, Depth: agronomy.Inches(in.num("depth_in"))})
		if err != nil {
			return nil, err
		}
		v, err := lime.MaterialRate(n.Rate, agronomy.Percent(in.num("score")))
		return out{"lb_per_1000sqft": float64(v)}, err
	},
	"lime.smp_iowa2002": func(in inputs) (out, error) {
		v, err := perAcre(lime.Case{PH: 5.5, Target: agronomy.PH(in.num("target_ph")), Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: agronomy.PH(in.num("buffer_ph"))}, CEC: 12, Depth: 6})
		return out{"lb_per_acre_6in": v}, err
	},
	"lime.smp_iowa2002_lawn": func(in inputs) (out, error) {
		n, err := lime.Requirement(lime.Case{PH: 5.5, Target: agronomy.PH(in.num("target_ph")), Buffer: agronomy.Buffer{Method: agronomy.SMP, PH: agronomy.PH(in.num("buffer_ph"))}, CEC: 12, Depth: agronomy.Inches(in.num("depth_in"))})
		return out{"lb_caco3_per_1000sqft": float64(n.Rate)}, err
	},
	"lime.sikora_kansas": func(in inputs) (out, error) {
		v, err := perAcre(lime.Case{PH: agronomy.PH(in.num("ph")), Target: agronomy.PH(in.num("target_ph")), Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: agronomy.PH(in.num("buffer_ph"))}, State: "KS", CEC: 12, Depth: agronomy.Inches(in.num("depth_in"))})
		return out{"lb_ecc_per_acre": v}, err
	},
	"lime.adams_evans_acidity": func(in inputs) (out, error) {
		v, err := lime.AdamsEvansAcidity(agronomy.PH(in.num("buffer_ph")))
		return out{"meq_per_100g": float64(v)}, err
	},
	"lime.adams_evans_hsat": func(in inputs) (out, error) {
		v, err := lime.AdamsEvansSaturation(agronomy.PH(in.num("ph")))
		return out{"hsat": v}, err
	},
	"lime.adams_evans": func(in inputs) (out, error) {
		v, err := lime.AdamsEvansLime(agronomy.PH(in.num("ph")), agronomy.PH(in.num("buffer_ph")), agronomy.PH(in.num("target_ph")))
		return out{"lb_per_acre": float64(v), "lb_per_1000sqft": float64(v.PerThousand())}, err
	},
	"lime.mehlich_nc_acidity": func(in inputs) (out, error) {
		v, err := lime.MehlichAcidity(agronomy.PH(in.num("buffer_ph")))
		return out{"acidity_meq_per_100cm3": float64(v)}, err
	},
	"lime.mehlich_nc": func(in inputs) (out, error) {
		ac := in.num("acidity_meq_per_100cm3")
		v, err := perAcre(lime.Case{PH: agronomy.PH(in.num("ph")), Target: agronomy.PH(in.num("target_ph")), Acidity: agronomy.Meq(ac), State: "NC", Depth: 8})
		return out{"tons_per_acre": v / agronomy.PoundsPerTon, "factor": v / agronomy.PoundsPerTon / ac}, err
	},
	"lime.mehlich_psu_turf": func(in inputs) (out, error) {
		n, err := lime.Requirement(lime.Case{PH: agronomy.PH(in.num("ph")), Target: agronomy.PH(in.num("target_ph")), Acidity: agronomy.Meq(in.num("acidity_meq_per_100g")), State: "PA", Depth: 7})
		return out{"lb_cce_per_1000sqft": float64(n.Rate)}, err
	},
	"lime.ph_from_amount_nc": func(in inputs) (out, error) {
		v, _, err := lime.ExpectedPH(lime.Case{PH: agronomy.PH(in.num("ph")), Acidity: agronomy.Meq(in.num("acidity_meq_per_100cm3")), State: "NC", Depth: 8}, agronomy.TonsPerAcre(in.num("tons_per_acre")).PerThousand())
		return out{"ph": float64(v)}, err
	},
	"lime.ph_from_amount_adams_evans": func(in inputs) (out, error) {
		effective := 0.73 * agronomy.PerAcre(in.num("lb_per_acre")).PerThousand() // of ordinary ground lime [uga-aglime-study]
		v, _, err := lime.ExpectedPH(lime.Case{PH: agronomy.PH(in.num("ph")), Buffer: agronomy.Buffer{Method: agronomy.AdamsEvans, PH: agronomy.PH(in.num("buffer_ph"))}, CEC: 8, Depth: 20.0 / 3}, effective)
		return out{"ph": float64(v)}, err
	},
	"lime.ph_from_amount_table": func(in inputs) (out, error) {
		if in.str("method") != "sikora-osu2025" {
			return nil, fmt.Errorf("method %s", in.str("method"))
		}
		c := lime.Case{PH: agronomy.PH(in.num("ph")), Target: 6.4, Buffer: agronomy.Buffer{Method: agronomy.Sikora, PH: agronomy.PH(in.num("buffer_ph"))}, State: "OR", CEC: 12, Depth: 6}
		v, _, err := lime.ExpectedPH(c, agronomy.TonsPerAcre(in.num("tons_per_acre_6in")).PerThousand())
		return out{"ph": float64(v)}, err
	},
	"lime.by_texture_usda": func(in inputs) (out, error) {
		v, err := lime.ByTextureUSDA(agronomy.PH(in.num("ph")), agronomy.PH(in.num("target_ph")), agronomy.Texture(in.str("texture")), in.str("region") == "warm")
		return out{"tons_per_acre_7in": float64(v), "lb_per_1000sqft_7in": float64(v.PerThousand()), "lb_per_1000sqft": float64(v.PerThousand())}, err
	},
	"lime.by_texture_usda_lawn": func(in inputs) (out, error) {
		n, err := lime.Requirement(lime.Case{PH: agronomy.PH(in.num("ph")), Target: agronomy.PH(in.num("target_ph")), Texture: agronomy.Texture(in.str("texture")), WarmRegion: in.str("region") == "warm", Depth: agronomy.Inches(in.num("depth_in"))})
		return out{"lb_per_1000sqft": float64(n.Rate) / lime.GroundActs}, err // the table is of ground limestone
	},
	"lime.split": func(in inputs) (out, error) {
		parts, err := lime.Dressings(agronomy.PerThousand(in.num("total_lb_per_1000sqft")), agronomy.PerThousand(in.num("cap_lb_per_1000sqft")))
		if err != nil {
			return nil, err
		}
		most := float64(parts[0])
		return out{"dressings": float64(len(parts)), "each_lb_per_1000sqft": most, "each_at_most_lb_per_1000sqft": max(most, in.num("cap_lb_per_1000sqft"))}, nil
	},
	"lime.split_georgia": func(in inputs) (out, error) {
		parts, err := lime.Dressings(agronomy.PerThousand(in.num("total_lb_per_1000sqft")), lime.CapTurf)
		return out{"now_lb": float64(parts[0]), "retest_after_months": float64(lime.HalfRetestMonths)}, err
	},
	"lime.seedbed_passes": func(in inputs) (out, error) {
		most, _ := lime.Cap(material.Material{}, false)
		parts, err := lime.Dressings(agronomy.PerThousand(in.num("total_lb_per_1000sqft")), most)
		return out{"passes": float64(len(parts)), "lb_each": float64(parts[0])}, err
	},
	"sulfur.plan": func(in inputs) (out, error) {
		parts, _ := lime.SulfurPlan(agronomy.PerThousand(in.num("total_lb_per_1000sqft")))
		return out{"applications": float64(len(parts))}, nil
	},
	"sulfur.caco3_neutralized": func(in inputs) (out, error) {
		return out{"caco3_lb": lime.CaCO3PerSulfur * in.num("sulfur_lb")}, nil
	},
}

// perAcre gives what a case takes, in lb an acre.
func perAcre(c lime.Case) (float64, error) {
	n, err := lime.Requirement(c)
	return float64(n.Rate.PerAcre()), err
}

// labelOf reads the sieves of a check, coarse to fine.
func labelOf(in inputs) []material.Sieve {
	var label []material.Sieve
	for _, mesh := range []int{4, 8, 10, 20, 50, 60, 100} {
		if p := in.numOr(fmt.Sprintf("through_%d", mesh), -1); p >= 0 {
			label = append(label, material.Sieve{Mesh: mesh, Passing: agronomy.Percent(p)})
		}
	}
	return label
}

// stoneBy rates a lime by a state's rule.
func stoneBy(state, name string, in inputs) (out, error) {
	r, ok := lime.FinenessRuleOf(state)
	if !ok {
		return nil, fmt.Errorf("no rule for %s", state)
	}
	fine, err := r.Fineness(labelOf(in))
	if err != nil {
		return nil, err
	}
	v, err := r.Effective(agronomy.Percent(in.numOr("cce_percent", in.numOr("tnp_percent", 100))), labelOf(in), agronomy.Percent(in.numOr("moisture_percent", 0)))
	return out{"fineness_percent": float64(fine), name: float64(v), "ecce_lb_per_ton": float64(v) * 20}, err
}
