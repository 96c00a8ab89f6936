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
		Note: "The law covers only turf that has been mowed for two growing seasons or longer. Compost and soil amendments with phosphate count too. The penalty is 500 dollars."},
	{ID: "ct-p-blackout", State: "CT", Kind: PhosphorusClosed, Binding: BindsUse,
		When: Span{MonthDay{12, 1}, MonthDay{3, 15}}, LowP2O5Percent: 0.67, Unless: LowPhosphate | GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2012-07", How: InPart, Confidence: MediumConfidence,
		Note: "Only products above 0.67 % phosphate. The state sets no dates for nitrogen. The dates come from a newspaper notice, not from the section; another newspaper gives December to February, so the longer span is used."},
	{ID: "ct-setback-water-ft", State: "CT", Kind: WaterDistance, Binding: BindsUse,
		Value: 20, Lesser: 15, LesserWith: "a drop spreader, a rotary spreader with deflector, or a targeted spray", Nutrients: Phosphorus, LowP2O5Percent: 0.67, Unless: LowPhosphate | GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "Only products above 0.67 % phosphate. Which spreader allows the shorter distance is from memory. A town's wetlands agency may require more, for any fertilizer."},
	{ID: "ct-impervious", State: "CT", Kind: PavedSurface, Binding: BindsUse,
		Nutrients: Phosphorus, Unless: GolfCourse | FarmLand,
		Citation: ctLaw, Agency: ctAgency, InForce: "2013-01-01", AsOf: "2012", How: Seen, Confidence: HighConfidence,
		Note: "The law names products with phosphate only; sweep up whatever lands on paving."},

	// District of Columbia
	{ID: "dc-n-blackout-pro", State: "DC", Kind: NitrogenClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 15}, MonthDay{3, 1}},
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "The law allows fertilizer after 1 Mar and before 15 Nov, so both these days are closed. It binds paid work only; residents are asked to do the same."},
	{ID: "dc-p-blackout-pro", State: "DC", Kind: PhosphorusClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 15}, MonthDay{3, 1}},
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "The law allows fertilizer after 1 Mar and before 15 Nov, so both these days are closed. It binds paid work only; residents are asked to do the same."},
	{ID: "dc-k-blackout-pro", State: "DC", Kind: PotassiumClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 15}, MonthDay{3, 1}},
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "The law allows fertilizer after 1 Mar and before 15 Nov, so both these days are closed. It binds paid work only; residents are asked to do the same."},
	{ID: "dc-setback-water-ft-pro", State: "DC", Kind: WaterDistance, Binds: PaidOnly, Binding: BindsUse,
		Value: 15, Lesser: 10, LesserWith: "a drop spreader, a rotary spreader with deflector, or a targeted spray",
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "Wetlands, storm drains and drainage ditches count as water."},
	{ID: "dc-frozen-ground-pro", State: "DC", Kind: GroundState, Binds: PaidOnly, Binding: BindsUse,
		Ground:   Frozen | Saturated,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-rain-pro", State: "DC", Kind: HeavyRain, Binds: PaidOnly, Binding: BindsUse,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "The statute names heavy rain; the agency adds the 24 hours before expected rain. Water within 24 hours, or spread on soil that is moist enough to hold the product."},
	{ID: "dc-impervious-pro", State: "DC", Kind: PavedSurface, Binds: PaidOnly, Binding: BindsUse,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-p-soil-test-required-pro", State: "DC", Kind: PhosphorusReport, Binds: PaidOnly, Binding: BindsUse,
		LowP2O5Percent: 0.67, ReportMonths: 36, MaxP2O5Percent: 5, Unless: SoilTest | LowPhosphate,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence,
		Note: "A report allows only products of 5 % phosphate or less. New and repaired turf need a report too."},
	{ID: "dc-p-cap-per-application-pro", State: "DC", Kind: PhosphorusDose, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.25,
		Citation: dcLaw2, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-p-annual-cap-pro", State: "DC", Kind: PhosphorusYear, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.5,
		Citation: dcLaw2, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2024-01", How: Seen, Confidence: HighConfidence},
	{ID: "dc-n-cap-per-application-pro", State: "DC", Kind: NitrogenDose, Binds: PaidOnly, Binding: BindsUse,
		Value: 0.9, Unless: EnhancedSource,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "The figure is from a summary of the bill; the nitrogen subsection as enacted was not read."},
	{ID: "dc-n-soluble-cap-per-application-pro", State: "DC", Kind: SolubleDose, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.7,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "The figure is from a summary of the bill; the nitrogen subsection as enacted was not read."},
	{ID: "dc-slow-release-fraction-pro", State: "DC", Kind: SlowNitrogen, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.2,
		Citation: dcLaw, Agency: dcAgency, InForce: "2013-04-20", AsOf: "2012", How: InPart, Confidence: MediumConfidence,
		Note: "The figure is from a summary of the bill; the nitrogen subsection as enacted was not read."},

	// Delaware
	{ID: "de-n-blackout-pro", State: "DE", Kind: NitrogenClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{12, 7}, MonthDay{2, 15}},
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence,
		Note: "For nutrient handlers who are certified or have to be. Since the 2024 law that includes paid turf work on 10,890 sq ft or more (10 acres before). Athletic fields, golf courses and sod farms are exempt."},
	{ID: "de-p-blackout-pro", State: "DE", Kind: PhosphorusClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{12, 7}, MonthDay{2, 15}},
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence,
		Note: "For nutrient handlers who are certified or have to be. Since the 2024 law that includes paid turf work on 10,890 sq ft or more (10 acres before). Athletic fields, golf courses and sod farms are exempt."},
	{ID: "de-frozen-ground-pro", State: "DE", Kind: GroundState, Binds: PaidOnly, Binding: BindsUse,
		Ground:   Frozen | Snow,
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence},
	{ID: "de-impervious-pro", State: "DE", Kind: PavedSurface, Binds: PaidOnly, Binding: BindsUse,
		Citation: deLaw, Agency: deAgency, InForce: "2007-06-10", AsOf: "2025-12", How: Seen, Confidence: HighConfidence,
		Note: "Remove spilled product from paving the same day."},

	// Florida
	{ID: "fl-n-soluble-cap-per-application", State: "FL", Kind: SolubleDose, Binding: BindsLabel,
		Value:    0.7,
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: Seen, Confidence: HighConfidence},
	{ID: "fl-n-cap-per-application", State: "FL", Kind: NitrogenDose, Binding: BindsLabel,
		Value: 1.0, Raised: 2.0, RaisedSlow: 0.65, RaisedWhen: Span{MonthDay{3, 1}, MonthDay{9, 30}},
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: InPart, Confidence: MediumConfidence,
		Note: "In spring and summer 2 lb is allowed if 65 % of the nitrogen is controlled-release and the county is not stricter; 1 lb is the safe figure."},
	{ID: "fl-p-cap-per-application", State: "FL", Kind: PhosphorusDose, Binding: BindsLabel,
		Value: 0.25, Raised: 1.0, Unless: SoilTest | NewLawn,
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: Seen, Confidence: HighConfidence,
		Note: "Establishing turf may get one starter application of up to 1.0 lb P₂O₅."},
	{ID: "fl-p-annual-cap", State: "FL", Kind: PhosphorusYear, Binding: BindsLabel,
		Value: 0.5, Unless: SoilTest | NewLawn,
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: Seen, Confidence: HighConfidence},
	{ID: "fl-n-annual-cap", State: "FL", Kind: NitrogenYear, Binding: BindsLabel,
		RefersTo: "UF/IFAS yearly nitrogen by grass and region",
		Citation: flLaw, Agency: flAgency, InForce: "2007-12-31", AsOf: "2015-01", How: InPart, Confidence: MediumConfidence,
		Note: "The university's yearly amounts apply; this table has no figure of the state's own."},

	// Illinois
	{ID: "il-p-soil-test-required-pro", State: "IL", Kind: PhosphorusReport, Binds: PaidOnly, Binding: BindsUse,
		ReportMonths: 36, NewSeasons: 2, Unless: SoilTest | NewLawn | RepairWork | LowPhosphate | GolfCourse | FarmLand,
		Citation: ilLaw, Agency: ilAgency, InForce: "2010", AsOf: "2025-01", How: Seen, Confidence: HighConfidence,
		Note: "Employees who treat their employer's lawn count as paid applicators. The section does not cover products for repair."},
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
