package agronomy

import "fmt"

// limeChecks answers the checks of this part by method.
var limeChecks = map[string]func(inputs) (out, error){
	"lime.cce_of": func(in inputs) (out, error) {
		v, ok := CCEOf(in.str("compound"))
		if !ok {
			return nil, fmt.Errorf("unknown compound")
		}
		return out{"cce_percent": float64(v)}, nil
	},
	"lime.caco3_for_acidity": func(in inputs) (out, error) {
		v := LimeForAcidity(Meq(in.num("acidity_meq_per_100g")), PerAcre(in.num("lb_soil_per_acre")))
		return out{"lb_per_acre": float64(v)}, nil
	},
	"lime.adjust_for_cce": func(in inputs) (out, error) {
		value := Percent(in.num("cce_percent"))
		lawn, err := MaterialRate(PerThousand(in.numOr("recommended_lb_per_1000sqft", 0)), value)
		if err != nil {
			return nil, err
		}
		garden, err := MaterialRate(PerThousand(10*in.numOr("recommended_lb_per_100sqft", 0)), value)
		return out{"lb_per_1000sqft": float64(lawn), "lb_per_100sqft": float64(garden) / 10}, err
	},
	"lime.enm": func(in inputs) (out, error) {
		fine := in.num("through_60")
		label := []Sieve{{8, Percent(100 - in.num("retained_8"))}, {40, Percent(fine + in.num("retained_60"))}, {60, Percent(fine)}}
		v, err := ENM(Percent(in.num("cce_percent")), label)
		return out{"enm_lb_per_ton": float64(v)}, err
	},
	"lime.tons_from_enm": func(in inputs) (out, error) {
		v, err := LimeForENM(PerAcre(in.num("enm_wanted_lb_per_acre")), Pounds(in.num("enm_lb_per_ton")))
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
		v, err := ENP(Percent(in.num("tnp_percent")), labelOf(in), Percent(in.num("moisture_percent")))
		o["enp_lb_per_ton"] = float64(v)
		return o, err
	},
	"lime.fineness_ohio": func(in inputs) (out, error) {
		p60 := in.num("through_60")
		p20 := p60 + in.num("between_20_60")
		r, _ := FinenessRuleOf("Ohio")
		f, err := r.Fineness([]Sieve{{8, Percent(p20 + in.num("between_8_20"))}, {20, Percent(p20)}, {60, Percent(p60)}})
		return out{"fineness_percent": float64(f)}, err
	},
	"lime.smp_ncr221": func(in inputs) (out, error) {
		v, err := SMPNCR221(PH(in.num("buffer_ph")), PH(in.num("target_ph")))
		return out{"tons_per_acre_8in": float64(v)}, err
	},
	"lime.smp_tristate1995": func(in inputs) (out, error) {
		v, err := SMPTriState(PH(in.num("lime_test_index")/10), PH(in.num("target_ph")))
		return out{"tons_per_acre_8in": float64(v)}, err
	},
	"lime.smp_needed": func(in inputs) (out, error) {
		v, err := SMPTriState(PH(in.num("lime_test_index")/10), 6.5)
		return out{"needed": v > 0}, err
	},
	"lime.smp_table_minus_equation": func(in inputs) (out, error) {
		b, t := PH(in.num("buffer_ph")), PH(in.num("target_ph"))
		table, err := SMPNCR221(b, t)
		if err != nil {
			return nil, err
		}
		line, err := SMPTriState(b, t)
		return out{"tons_per_acre": float64(table - line)}, err
	},
	"lime.scale_depth": func(in inputs) (out, error) {
		tons := in.numOr("tons_per_acre", in.numOr("tons_per_acre_8in", 0))
		v, err := LimeAtDepth(PerAcre(tons*PoundsPerTon), Inches(in.num("table_depth_in")), Inches(in.num("depth_in")))
		return out{"tons_per_acre": float64(v.PerAcre()) / PoundsPerTon}, err
	},
	"lime.smp_lawn": func(in inputs) (out, error) {
		t, err := SMPTriState(PH(in.num("buffer_ph")), PH(in.num("target_ph")))
		if err != nil {
			return nil, err
		}
		v, err := LimeAtDepth(PerAcre(t*PoundsPerTon)*0.9, 8, Inches(in.num("depth_in")))
		if err != nil {
			return nil, err
		}
		stone, err := MaterialRate(v, Percent(in.num("cce_percent")))
		return out{"lb_per_1000sqft": float64(stone)}, err
	},
	"lime.tristate_other_stone": func(in inputs) (out, error) {
		stone, err := MaterialRate(PerThousand(0.9*in.num("tons_per_acre")), Percent(in.num("neutralizing_value_percent")))
		return out{"tons_per_acre": float64(stone)}, err
	},
	"lime.sikora_osu2025": func(in inputs) (out, error) {
		v, err := SikoraOregon(PH(in.num("buffer_ph")), PH(in.num("target_ph")))
		return out{"tons_per_acre_6in": float64(v)}, err
	},
	"lime.sikora_osu2025_lawn": func(in inputs) (out, error) {
		n, err := LimeRequirement(LimeCase{PH: 5.5, Target: PH(in.num("target_ph")), Buffer: Buffer{Sikora, PH(in.num("buffer_ph"))}, State: "OR", CEC: 12, Depth: Inches(in.num("depth_in"))})
		if err != nil {
			return nil, err
		}
		v, err := MaterialRate(n.Rate, Percent(in.num("score")))
		return out{"lb_per_1000sqft": float64(v)}, err
	},
	"lime.smp_iowa2002": func(in inputs) (out, error) {
		v, err := SMPIowa(PH(in.num("buffer_ph")), PH(in.num("target_ph")))
		return out{"lb_per_acre_6in": float64(v)}, err
	},
	"lime.smp_iowa2002_lawn": func(in inputs) (out, error) {
		n, err := LimeRequirement(LimeCase{PH: 5.5, Target: PH(in.num("target_ph")), Buffer: Buffer{SMP, PH(in.num("buffer_ph"))}, CEC: 12, Depth: Inches(in.num("depth_in"))})
		return out{"lb_caco3_per_1000sqft": float64(n.Rate)}, err
	},
	"lime.sikora_kansas": func(in inputs) (out, error) {
		v, err := SikoraKansas(PH(in.num("ph")), PH(in.num("buffer_ph")), PH(in.num("target_ph")), Inches(in.num("depth_in")))
		return out{"lb_ecc_per_acre": float64(v)}, err
	},
	"lime.adams_evans_acidity": func(in inputs) (out, error) {
		v, err := AdamsEvansAcidity(PH(in.num("buffer_ph")))
		return out{"meq_per_100g": float64(v)}, err
	},
	"lime.adams_evans_hsat": func(in inputs) (out, error) {
		v, err := AdamsEvansSaturation(PH(in.num("ph")))
		return out{"hsat": v}, err
	},
	"lime.adams_evans": func(in inputs) (out, error) {
		v, err := AdamsEvansLime(PH(in.num("ph")), PH(in.num("buffer_ph")), PH(in.num("target_ph")))
		return out{"lb_per_acre": float64(v), "lb_per_1000sqft": float64(v.PerThousand())}, err
	},
	"lime.mehlich_nc_acidity": func(in inputs) (out, error) {
		v, err := MehlichAcidity(PH(in.num("buffer_ph")))
		return out{"acidity_meq_per_100cm3": float64(v)}, err
	},
	"lime.mehlich_nc": func(in inputs) (out, error) {
		ac := in.num("acidity_meq_per_100cm3")
		v, err := MehlichNC(PH(in.num("ph")), PH(in.num("target_ph")), Meq(ac), TonsPerAcre(in.num("residual_ton_per_acre")))
		return out{"tons_per_acre": float64(v), "factor": float64(v) / ac}, err
	},
	"lime.mehlich_psu_field": func(in inputs) (out, error) {
		v, err := MehlichPennField(PH(in.num("ph")), Meq(in.num("acidity_meq_per_100g")), PH(in.num("target_ph")))
		return out{"lb_per_acre": float64(v)}, err
	},
	"lime.mehlich_psu_turf": func(in inputs) (out, error) {
		v, err := MehlichPennTurf(PH(in.num("ph")), Meq(in.num("acidity_meq_per_100g")), PH(in.num("target_ph")))
		return out{"lb_cce_per_1000sqft": float64(v)}, err
	},
	"lime.ph_from_amount_nc": func(in inputs) (out, error) {
		v, err := MehlichNCPH(PH(in.num("ph")), Meq(in.num("acidity_meq_per_100cm3")), TonsPerAcre(in.num("tons_per_acre")))
		return out{"ph": float64(v)}, err
	},
	"lime.ph_from_amount_adams_evans": func(in inputs) (out, error) {
		v, err := AdamsEvansPH(PH(in.num("ph")), PH(in.num("buffer_ph")), PerAcre(in.num("lb_per_acre")))
		return out{"ph": float64(v)}, err
	},
	"lime.ph_from_amount_table": func(in inputs) (out, error) {
		if in.str("method") != "sikora-osu2025" {
			return nil, fmt.Errorf("method %s", in.str("method"))
		}
		c := LimeCase{PH: PH(in.num("ph")), Target: 6.4, Buffer: Buffer{Sikora, PH(in.num("buffer_ph"))}, State: "OR", CEC: 12, Depth: 6}
		v, _, err := ExpectedPH(c, TonsPerAcre(in.num("tons_per_acre_6in")).PerThousand())
		return out{"ph": float64(v)}, err
	},
	"lime.by_texture_table100": func(in inputs) (out, error) {
		v, err := ByTextureTable100(PH(in.num("ph")), Texture(in.str("texture")))
		return out{"lb_per_1000sqft": float64(v)}, err
	},
	"lime.by_texture_usda": func(in inputs) (out, error) {
		v, err := ByTextureUSDA(PH(in.num("ph")), PH(in.num("target_ph")), Texture(in.str("texture")), in.str("region") == "warm")
		return out{"tons_per_acre_7in": float64(v), "lb_per_1000sqft_7in": float64(v.PerThousand()), "lb_per_1000sqft": float64(v.PerThousand())}, err
	},
	"lime.by_texture_usda_lawn": func(in inputs) (out, error) {
		n, err := LimeRequirement(LimeCase{PH: PH(in.num("ph")), Target: PH(in.num("target_ph")), Texture: Texture(in.str("texture")), WarmRegion: in.str("region") == "warm", Depth: Inches(in.num("depth_in"))})
		return out{"lb_per_1000sqft": float64(n.Rate)}, err
	},
	"lime.split": func(in inputs) (out, error) {
		parts, err := LimeDressings(PerThousand(in.num("total_lb_per_1000sqft")), PerThousand(in.num("cap_lb_per_1000sqft")))
		if err != nil {
			return nil, err
		}
		most := float64(parts[0])
		return out{"dressings": float64(len(parts)), "each_lb_per_1000sqft": most, "each_at_most_lb_per_1000sqft": max(most, in.num("cap_lb_per_1000sqft"))}, nil
	},
	"lime.split_fill_first": func(in inputs) (out, error) {
		parts, err := LimeFillFirst(PerThousand(in.num("total_lb_per_1000sqft")), PerThousand(in.num("cap_lb_per_1000sqft")))
		if err != nil || len(parts) != 2 {
			return nil, fmt.Errorf("parts %v: %w", parts, err)
		}
		return out{"first_lb_per_1000sqft": float64(parts[0]), "second_lb_per_1000sqft": float64(parts[1]), "months_between": float64(LimeSpacingWantedDays / 30)}, nil
	},
	"lime.split_georgia": func(in inputs) (out, error) {
		parts, err := LimeDressings(PerThousand(in.num("total_lb_per_1000sqft")), LimeCapTurf)
		return out{"now_lb": float64(parts[0]), "retest_after_months": float64(LimeHalfRetestMonths)}, err
	},
	"lime.seedbed_passes": func(in inputs) (out, error) {
		most, _ := LimeCap(Material{}, false)
		parts, err := LimeDressings(PerThousand(in.num("total_lb_per_1000sqft")), most)
		return out{"passes": float64(len(parts)), "lb_each": float64(parts[0])}, err
	},
	"sulfur.plan": func(in inputs) (out, error) {
		parts, _ := SulfurPlan(PerThousand(in.num("total_lb_per_1000sqft")))
		return out{"applications": float64(len(parts))}, nil
	},
	"sulfur.caco3_neutralized": func(in inputs) (out, error) {
		return out{"caco3_lb": CaCO3PerSulfur * in.num("sulfur_lb")}, nil
	},
}

// labelOf reads the sieves of a check, coarse to fine.
func labelOf(in inputs) []Sieve {
	var label []Sieve
	for _, mesh := range []int{4, 8, 10, 20, 50, 60, 100} {
		if p := in.numOr(fmt.Sprintf("through_%d", mesh), -1); p >= 0 {
			label = append(label, Sieve{mesh, Percent(p)})
		}
	}
	return label
}

// stoneBy rates a lime by a state's rule.
func stoneBy(state, name string, in inputs) (out, error) {
	r, ok := FinenessRuleOf(state)
	if !ok {
		return nil, fmt.Errorf("no rule for %s", state)
	}
	fine, err := r.Fineness(labelOf(in))
	if err != nil {
		return nil, err
	}
	v, err := r.Effective(Percent(in.numOr("cce_percent", in.numOr("tnp_percent", 100))), labelOf(in), Percent(in.numOr("moisture_percent", 0)))
	return out{"fineness_percent": float64(fine), name: float64(v), "ecce_lb_per_ton": float64(v) * 20}, err
}
