package law

// Rules of Connecticut, District of Columbia, Delaware, Florida, Illinois.
// Each row names its own source: Citation, the date of the text (AsOf), how it was read.

const (
	ctLaw    = "Conn. Gen. Stat. § 22-111yy (P.A. 12-155, § 2)"
	ctAgency = "Connecticut Department of Agriculture"
	dcLaw    = "D.C. Code § 8-104.03 (Anacostia River Clean Up and Protection Fertilizer Act of 2012)"
	dcLaw2   = "D.C. Code §§ 8-104.02(4), 8-104.03(d)"
	dcAgency = "DC Department of Energy and Environment"
	deLaw    = "3 Del. Admin. Code 1201, § 6.2 (3 Del. C. ch. 22)"
	deAgency = "Delaware Nutrient Management Commission"
	flLaw    = "Fla. Admin. Code r. 5E-1.003 (urban turf label directions)"
	flAgency = "Florida Department of Agriculture and Consumer Services"
	ilLaw    = "415 ILCS 65/5a (P.A. 96-1005)"
	ilAgency = "Illinois Department of Agriculture"
)

var rulesCTtoIL = []Rule{
	// Connecticut
	{ID: "ct-p-soil-test-required", State: "CT", Kind: PhosphorusReport, Binding: BindsUse,
		LowP2O5Percent: 0.67, ReportMonths: 24, NewSeasons: 2, Unless: SoilTest | NewLawn | RepairWork | LowPhosphate | GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "Only turf mowed for two growing seasons or longer is bound. Compost and soil amendments with phosphate count too. The penalty is 500 dollars."},
	{ID: "ct-p-blackout", State: "CT", Kind: PhosphorusClosed, Binding: BindsUse,
		When: Span{MonthDay{12, 1}, MonthDay{3, 15}}, LowP2O5Percent: 0.67, Unless: LowPhosphate | GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2012-07", How: InPart, Confidence: MediumConfidence,
		Note: "Only products above 0.67 % phosphate; no state dates for nitrogen. Another newspaper has December to February; the longer span is used here. Dates from a newspaper notice, not from the section."},
	{ID: "ct-setback-water-ft", State: "CT", Kind: WaterDistance, Binding: BindsUse,
		Value: 20, Lesser: 15, LesserWith: "a drop spreader, a rotary spreader with deflector, or a targeted spray", Nutrients: Phosphorus, LowP2O5Percent: 0.67, Unless: LowPhosphate | GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "Only products above 0.67 % phosphate. The tool that earns the lesser distance is from memory. Town wetlands agencies may want more, for any fertilizer."},
	{ID: "ct-impervious", State: "CT", Kind: PavedSurface, Binding: BindsUse,
		Nutrients: Phosphorus, Unless: GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2012", How: Seen, Confidence: HighConfidence,
		Note: "The law names phosphate products; sweep up whatever lands on paving."},

	// District of Columbia
	{ID: "dc-n-blackout-pro", State: "DC", Kind: NitrogenClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 15}, MonthDay{3, 1}},
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "Open after 1 Mar and before 15 Nov, so the two named days are closed. Only paid work is bound; residents are asked to do the same."},
	{ID: "dc-p-blackout-pro", State: "DC", Kind: PhosphorusClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 15}, MonthDay{3, 1}},
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "Open after 1 Mar and before 15 Nov, so the two named days are closed. Only paid work is bound; residents are asked to do the same."},
	{ID: "dc-k-blackout-pro", State: "DC", Kind: PotassiumClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 15}, MonthDay{3, 1}},
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "Open after 1 Mar and before 15 Nov, so the two named days are closed. Only paid work is bound; residents are asked to do the same."},
	{ID: "dc-setback-water-ft-pro", State: "DC", Kind: WaterDistance, Binds: PaidOnly, Binding: BindsUse,
		Value: 15, Lesser: 10, LesserWith: "a drop spreader, a rotary spreader with deflector, or a targeted spray",
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "Wetlands, storm drains and drainage ditches count as water."},
	{ID: "dc-frozen-ground-pro", State: "DC", Kind: GroundState, Binds: PaidOnly, Binding: BindsUse,
		Ground:   Frozen | Saturated,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-rain-pro", State: "DC", Kind: HeavyRain, Binds: PaidOnly, Binding: BindsUse,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "Heavy rain by statute; the agency adds the 24 hours ahead of expected rain. Water the soil within 24 hours, or have it moist enough to hold the product."},
	{ID: "dc-impervious-pro", State: "DC", Kind: PavedSurface, Binds: PaidOnly, Binding: BindsUse,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-p-soil-test-required-pro", State: "DC", Kind: PhosphorusReport, Binds: PaidOnly, Binding: BindsUse,
		LowP2O5Percent: 0.67, ReportMonths: 36, MaxP2O5Percent: 5, Unless: SoilTest | LowPhosphate,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "A report opens only products of 5 % phosphate or less, and new and repaired turf need the report as well."},
	{ID: "dc-p-cap-per-application-pro", State: "DC", Kind: PhosphorusDose, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.25,
		Citation: dcLaw2, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-p-annual-cap-pro", State: "DC", Kind: PhosphorusYear, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.5,
		Citation: dcLaw2, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-n-cap-per-application-pro", State: "DC", Kind: NitrogenDose, Binds: PaidOnly, Binding: BindsUse,
		Value: 0.9, Unless: EnhancedSource,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "Figure from a summary of the bill; the nitrogen subsection as passed was not read."},
	{ID: "dc-n-soluble-cap-per-application-pro", State: "DC", Kind: SolubleDose, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.7,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "Figure from a summary of the bill; the nitrogen subsection as passed was not read."},
	{ID: "dc-slow-release-fraction-pro", State: "DC", Kind: SlowNitrogen, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.2,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "Figure from a summary of the bill; the nitrogen subsection as passed was not read."},

	// Delaware
	{ID: "de-n-blackout-pro", State: "DE", Kind: NitrogenClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{12, 7}, MonthDay{2, 15}},
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence,
		Note: "Holds for nutrient handlers who are, or must be, certified. Paid turf work counts from 10,890 sq ft of serviced land since the 2024 law (10 acres before). Athletic fields, golf courses and sod farms are outside."},
	{ID: "de-p-blackout-pro", State: "DE", Kind: PhosphorusClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{12, 7}, MonthDay{2, 15}},
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence,
		Note: "Holds for nutrient handlers who are, or must be, certified. Paid turf work counts from 10,890 sq ft of serviced land since the 2024 law (10 acres before). Athletic fields, golf courses and sod farms are outside."},
	{ID: "de-frozen-ground-pro", State: "DE", Kind: GroundState, Binds: PaidOnly, Binding: BindsUse,
		Ground:   Frozen | Snow,
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence},
	{ID: "de-impervious-pro", State: "DE", Kind: PavedSurface, Binds: PaidOnly, Binding: BindsUse,
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence,
		Note: "Spilled product must be off the paving the same day."},

	// Florida
	{ID: "fl-n-soluble-cap-per-application", State: "FL", Kind: SolubleDose, Binding: BindsLabel,
		Value:    0.7,
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: Seen, Confidence: HighConfidence},
	{ID: "fl-n-cap-per-application", State: "FL", Kind: NitrogenDose, Binding: BindsLabel,
		Value: 1.0, Raised: 2.0, RaisedSlow: 0.65, RaisedWhen: Span{MonthDay{3, 1}, MonthDay{9, 30}},
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: InPart, Confidence: MediumConfidence,
		Note: "Two pounds are possible in spring or summer with 65 % controlled-release nitrogen, if no county is stricter; one pound is the safe figure."},
	{ID: "fl-p-cap-per-application", State: "FL", Kind: PhosphorusDose, Binding: BindsLabel,
		Value: 0.25, Raised: 1.0, Unless: SoilTest | NewLawn,
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: Seen, Confidence: HighConfidence,
		Note: "Establishment may take one starter application of up to 1.0 lb P₂O₅."},
	{ID: "fl-p-annual-cap", State: "FL", Kind: PhosphorusYear, Binding: BindsLabel,
		Value: 0.5, Unless: SoilTest | NewLawn,
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: Seen, Confidence: HighConfidence},
	{ID: "fl-n-annual-cap", State: "FL", Kind: NitrogenYear, Binding: BindsLabel,
		RefersTo: "UF/IFAS yearly nitrogen by grass and region",
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: InPart, Confidence: MediumConfidence,
		Note: "The university's yearly amounts hold; no state figure is in this table."},

	// Illinois
	{ID: "il-p-soil-test-required-pro", State: "IL", Kind: PhosphorusReport, Binds: PaidOnly, Binding: BindsUse,
		ReportMonths: 36, NewSeasons: 2, Unless: SoilTest | NewLawn | RepairWork | LowPhosphate | GolfCourse | FarmLand,
		Citation: ilLaw, Agency: ilAgency, InForce: "2010", AsOf: "2025-01", How: Seen, Confidence: HighConfidence,
		Note: "Staff who treat their employer's lawn count as hired applicators. Products for repair are outside the section."},
	{ID: "il-impervious-pro", State: "IL", Kind: PavedSurface, Binds: PaidOnly, Binding: BindsUse,
		Unless:   GolfCourse | FarmLand,
		Citation: ilLaw, Agency: ilAgency, InForce: "2010", AsOf: "2025-01", How: Seen, Confidence: HighConfidence},
	{ID: "il-setback-water-ft-pro", State: "IL", Kind: WaterDistance, Binds: PaidOnly, Binding: BindsUse,
		Value: 15, Lesser: 3, LesserWith: "a sprayer, a drop spreader, or a rotary spreader with deflector", Unless: GolfCourse | FarmLand,
		Citation: ilLaw, Agency: ilAgency, InForce: "2010", AsOf: "2025-01", How: Seen, Confidence: HighConfidence},
	{ID: "il-frozen-ground-pro", State: "IL", Kind: GroundState, Binds: PaidOnly, Binding: BindsUse,
		Ground: Frozen | Saturated, Unless: GolfCourse | FarmLand,
		Citation: ilLaw, Agency: ilAgency, InForce: "2010", AsOf: "2025-01", How: Seen, Confidence: HighConfidence,
		Note: "Frozen means a frozen root layer, usually 3 to 4 in deep; saturated means visible standing water."},
}
