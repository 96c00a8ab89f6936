package law

// Rules of Massachusetts, Maryland, Maine, Michigan, Minnesota.
// Each row names its own source: Citation, the date of the text (AsOf), how it was read.

const (
	maLaw    = "330 CMR 31.05"
	maAgency = "Massachusetts Department of Agricultural Resources"
	mdLaw    = "Md. Code, Agric. § 8-803.5"
	mdLaw2   = "Md. Code, Agric. §§ 8-803.4, 8-803.5"
	mdLaw3   = "Md. Code, Agric. § 6-224"
	mdLaw4   = "Md. Code, Agric. § 8-803.5; University of Maryland Extension schedule"
	mdAgency = "Maryland Department of Agriculture"
	meLaw    = "38 M.R.S. § 419"
	meLaw2   = "An Act To Protect Maine Lakes (LD 568, 2015); section number from memory: 38 M.R.S. § 418-B"
	meAgency = "Maine Department of Environmental Protection"
	miLaw    = "MCL 324.8512b, 324.8512f (1994 PA 451 Part 85; PA 299 of 2010, PA 151 of 2013)"
	miAgency = "Michigan Department of Agriculture and Rural Development"
	mnLaw    = "Minn. Stat. § 18C.60"
	mnLaw2   = "Minn. Laws 2002 ch. 345 (place in ch. 18C not read)"
	mnAgency = "Minnesota Department of Agriculture"
)

var rulesMAtoMN = []Rule{
	// Massachusetts
	{ID: "ma-p-soil-test-required", State: "MA", Kind: PhosphorusReport, Binding: BindsUse,
		LowP2O5Percent: 0.67, ReportMonths: 36, NewSeasons: 1, OrganicMaxP2O5: 0.25, Unless: SoilTest | NewLawn | RepairWork | OrganicSource,
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2024-12", How: Seen, Confidence: HighConfidence,
		Note: "A new lawn is one sown on bare ground or in a renovation, in its first growing season; patching counts only as part of a renovation. An organic source needs no report for one application a year of up to 0.25 lb P₂O₅ per 1000 sq ft, or at 0.67 % phosphate or less. The state university's guidelines are the highest rates."},
	{ID: "ma-n-blackout", State: "MA", Kind: NitrogenClosed, Binding: BindsUse,
		When:     Span{MonthDay{12, 1}, MonthDay{3, 1}},
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015-07", How: InPart, Confidence: MediumConfidence,
		Note: "Summaries disagree about nitrogen and potassium; the stricter one is used."},
	{ID: "ma-p-blackout", State: "MA", Kind: PhosphorusClosed, Binding: BindsUse,
		When:     Span{MonthDay{12, 1}, MonthDay{3, 1}},
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015-07", How: InPart, Confidence: MediumConfidence,
		Note: "Summaries disagree about nitrogen and potassium; the stricter one is used."},
	{ID: "ma-k-blackout", State: "MA", Kind: PotassiumClosed, Binding: BindsUse,
		When:     Span{MonthDay{12, 1}, MonthDay{3, 1}},
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015-07", How: InPart, Confidence: MediumConfidence,
		Note: "Summaries disagree about nitrogen and potassium; the stricter one is used."},
	{ID: "ma-frozen-ground", State: "MA", Kind: GroundState, Binding: BindsUse,
		Ground:   Frozen | Snow | Saturated,
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015", How: InPart, Confidence: MediumConfidence,
		Note: "The ban covers land that often floods, too."},
	{ID: "ma-setback-water-ft", State: "MA", Kind: WaterDistance, Binding: BindsUse,
		Value: 100, Waters: DrinkingSupply, Scope: "surface water used for public drinking supply",
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015", How: InPart, Confidence: MediumConfidence,
		Note: "The inner protection zone of a public well is closed too."},
	{ID: "ma-setback-water-ft-2", State: "MA", Kind: WaterDistance, Binding: BindsUse,
		Value: 20, Lesser: 10, LesserWith: "a drop spreader, a rotary spreader with deflector, or a targeted spray", Waters: anyWater &^ DrinkingSupply, Scope: "other surface water",
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015", How: FromMemory, Confidence: LowConfidence},
	{ID: "ma-impervious", State: "MA", Kind: PavedSurface, Binding: BindsUse,
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2015", How: FromMemory, Confidence: MediumConfidence},
	{ID: "ma-n-annual-cap", State: "MA", Kind: NitrogenYear, Binding: BindsUse,
		RefersTo: "UMass Extension nutrient guidelines for turf",
		Citation: maLaw, Agency: maAgency, InForce: "2015-06-05", AsOf: "2024-12", How: InPart, Confidence: MediumConfidence,
		Note: "The university's guidelines apply; this table has no figure of the state's own."},

	// Maryland
	{ID: "md-n-blackout-home", State: "MD", Kind: NitrogenClosed, Binds: HomeownersOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 16}, MonthDay{2, 29}},
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: Seen, Confidence: HighConfidence,
		Note: "Fertilizer is allowed through 15 Nov and from 1 Mar. The department allows potassium and lime in winter."},
	{ID: "md-p-blackout-home", State: "MD", Kind: PhosphorusClosed, Binds: HomeownersOnly, Binding: BindsUse,
		When:     Span{MonthDay{11, 16}, MonthDay{2, 29}},
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: Seen, Confidence: HighConfidence,
		Note: "Fertilizer is allowed through 15 Nov and from 1 Mar. The department allows potassium and lime in winter."},
	{ID: "md-n-blackout-pro", State: "MD", Kind: NitrogenClosed, Binds: PaidOnly, Binding: BindsUse,
		When:     Span{MonthDay{12, 1}, MonthDay{2, 29}},
		Citation: mdLaw2, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: InPart, Confidence: MediumConfidence,
		Note: "Sources differ on 1 Dec itself; here it is closed."},
	{ID: "md-n-cap-per-application-pro", State: "MD", Kind: NitrogenDose, Binds: PaidOnly, Binding: BindsUse,
		When: Span{MonthDay{11, 16}, MonthDay{11, 30}}, Value: 0.5,
		Citation: mdLaw2, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: InPart, Confidence: MediumConfidence,
		Note: "Sources differ on whether the half pound may include slow nitrogen; here it limits the total nitrogen."},
	{ID: "md-p-blackout-pro", State: "MD", Kind: PhosphorusClosed, Binds: PaidOnly, Binding: BindsUse,
		When: Span{MonthDay{11, 16}, MonthDay{2, 29}}, Keep: true,
		Citation: mdLaw2, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: InPart, Confidence: LowConfidence,
		Note: "Sources differ (mid-November or December); the earlier date is used."},
	{ID: "md-p-soil-test-required", State: "MD", Kind: PhosphorusReport, Binding: BindsUse,
		ReportMonths: 36, Unless: SoilTest | NewLawn | RepairWork | FarmLand,
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: Seen, Confidence: HighConfidence,
		Note: "The laboratory must be on the state's list."},
	{ID: "md-setback-water-ft", State: "MD", Kind: WaterDistance, Binding: BindsUse,
		Value: 15, Lesser: 10, LesserWith: "a drop spreader, a rotary spreader with deflector, or a targeted spray", Nutrients: Nitrogen | Phosphorus,
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: Seen, Confidence: HighConfidence,
		Note: "Ponds, public ditches, tax ditches and public drains count as water; sanitary sewers do not."},
	{ID: "md-frozen-ground", State: "MD", Kind: GroundState, Binding: BindsUse,
		Nutrients: Nitrogen | Phosphorus, Ground: Frozen,
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: Seen, Confidence: HighConfidence},
	{ID: "md-impervious", State: "MD", Kind: PavedSurface, Binding: BindsUse,
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: Seen, Confidence: HighConfidence,
		Note: "Fertilizer may not be used as a deicer either (§ 6-224)."},
	{ID: "md-rain", State: "MD", Kind: HeavyRain, Binding: BindsUse,
		Citation: mdLaw, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2021-11", How: InPart, Confidence: MediumConfidence},
	{ID: "md-n-cap-per-application", State: "MD", Kind: NitrogenDose, Binding: BindsLabel,
		Value: 0.9, Unless: EnhancedSource,
		Citation: mdLaw3, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2023-03", How: Seen, Confidence: HighConfidence,
		Note: "The department asks homeowners to keep to it too."},
	{ID: "md-n-soluble-cap-per-application", State: "MD", Kind: SolubleDose, Binding: BindsLabel,
		Value:    0.7,
		Citation: mdLaw3, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2023-03", How: Seen, Confidence: HighConfidence},
	{ID: "md-slow-release-fraction", State: "MD", Kind: SlowNitrogen, Binding: BindsLabel,
		Value: 0.2, Unless: AllSoluble,
		Citation: mdLaw3, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2023-03", How: Seen, Confidence: HighConfidence,
		Note: "Enhanced-efficiency products have their own limits: 2.5 lb a year, 80 % of the year's recommendation in one application, 0.7 lb released in a month. A fully soluble dose may bring 0.7 lb at most."},
	{ID: "md-n-annual-cap", State: "MD", Kind: NitrogenYear, Binding: BindsUse,
		RefersTo: "University of Maryland Extension lawn schedule", byGrass: []grassCap{{"tall fescue", 2.7}, {"Kentucky bluegrass", 2.7}, {"fine fescue", 1.4}, {"zoysiagrass", 1.8}, {"bermudagrass", 2.7}},
		Citation: mdLaw4, Agency: mdAgency, InForce: "2013-10-01", AsOf: "2023-03", How: Seen, Confidence: MediumConfidence,
		Note: "The law refers to the university's recommendations, which may be revised."},

	// Maine
	{ID: "me-label", State: "ME", Kind: LabelOrSign, Binding: BindsSale,
		Unless:   SoilTest | NewLawn | RepairWork,
		Citation: meLaw, Agency: meAgency, InForce: "2008-01-01", AsOf: "2012", How: Seen, Confidence: HighConfidence,
		Note: "The shop must post a sign that advises against products above 0.67 % phosphate on established lawns. That is advice; even so, spread phosphorus only if a soil report calls for it."},
	{ID: "me-setback-water-ft", State: "ME", Kind: WaterDistance, Binding: BindsUse,
		Value: 25, Lesser: 10, LesserWith: "a targeted spreader", Nutrients: Nitrogen | Phosphorus, Unless: FarmLand, Waters: GreatPond, Scope: "great ponds, from the normal high-water line",
		Citation: meLaw2, Agency: meAgency, InForce: "2015", AsOf: "2015-05", How: InPart, Confidence: MediumConfidence,
		Note: "Lists of state laws often leave it out. Erosion repair that follows a recommendation may be exempt. The section number is from memory."},

	// Michigan
	{ID: "mi-p-soil-test-required", State: "MI", Kind: PhosphorusReport, Binding: BindsUse,
		ReportMonths: 36, Unless: SoilTest | NewLawn | OrganicSource | GolfCourse | FarmLand,
		Citation: miLaw, Agency: miAgency, InForce: "2012-01-01", AsOf: "2013-11", How: Seen, Confidence: HighConfidence,
		Note: "A tissue test counts too. The rate may be no more than what the test calls for."},
	{ID: "mi-p-cap-per-application", State: "MI", Kind: PhosphorusDose, Binding: BindsUse,
		Value: 0.25, Only: OrganicSource, Scope: "biosolids, natural fertilizer, manipulated manure",
		Citation: miLaw, Agency: miAgency, InForce: "2012-01-01", AsOf: "2013-11", How: Seen, Confidence: HighConfidence,
		Note: "Natural sources may bring this much without a report. The law says phosphorus; it is read here as P₂O₅, the smaller amount."},
	{ID: "mi-setback-water-ft", State: "MI", Kind: WaterDistance, Binding: BindsUse,
		Value: 15, Lesser: 3, LesserWith: "a drop spreader, or a spreader with guard or deflector", Unless: NaturalStrip | FarmLand,
		Citation: miLaw, Agency: miAgency, InForce: "2012-01-01", AsOf: "2013-11", How: Seen, Confidence: HighConfidence,
		Note: "No distance is required behind a continuous natural strip 10 ft wide."},
	{ID: "mi-frozen-ground", State: "MI", Kind: GroundState, Binding: BindsUse,
		Ground:   Frozen | Saturated,
		Citation: miLaw, Agency: miAgency, InForce: "2012-01-01", AsOf: "2013-11", How: Seen, Confidence: HighConfidence},
	{ID: "mi-impervious", State: "MI", Kind: PavedSurface, Binding: BindsUse,
		Citation: miLaw, Agency: miAgency, InForce: "2012-01-01", AsOf: "2013-11", How: Seen, Confidence: HighConfidence,
		Note: "Clean up spills at once, and keep wash water out of drains."},

	// Minnesota
	{ID: "mn-p-soil-test-required", State: "MN", Kind: PhosphorusReport, Binding: BindsUse,
		ReportMonths: 36, NewSeasons: 1, Unless: SoilTest | NewLawn | GolfCourse | FarmLand,
		Citation: mnLaw, Agency: mnAgency, InForce: "2005-01-01", AsOf: "2023", How: Seen, Confidence: HighConfidence,
		Note: "A tissue test counts too. The laboratory must be approved, and the rate may not exceed the state university's. Repair of an old lawn is no exception."},
	{ID: "mn-impervious", State: "MN", Kind: PavedSurface, Binding: BindsUse,
		Citation: mnLaw2, Agency: mnAgency, InForce: "2004-01-01", AsOf: "2023", How: InPart, Confidence: MediumConfidence},
}
