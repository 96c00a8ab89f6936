package law

// Rules of Ohio, Pennsylvania, Virginia, Vermont, Washington, Wisconsin, West Virginia.
// Each row names its own source: Citation, the date of the text (AsOf), how it was read.

const (
	ohLaw     = "Ohio Rev. Code § 905.326"
	ohAgency  = "Ohio Department of Agriculture"
	paLaw     = "3 Pa.C.S. § 6813 (Act 83 of 2022, amended 2023)"
	paLaw2    = "3 Pa.C.S. § 6812 (Act 83 of 2022)"
	paLaw3    = "3 Pa.C.S. § 6804"
	paAgency  = "Pennsylvania Department of Agriculture"
	vaLaw     = "Va. Code §§ 3.2-3600, 3.2-3611 (2011 Acts chs. 341, 353)"
	vaLaw2    = "Va. Code § 3.2-3607"
	vaLaw3    = "Virginia Nutrient Management Standards and Criteria (rev. July 2014)"
	vaAgency  = "Virginia Department of Agriculture and Consumer Services"
	vaAgency2 = "Virginia Department of Conservation and Recreation"
	vtLaw     = "10 V.S.A. § 1266b (Act 37 of 2011)"
	vtAgency  = "Vermont Agency of Agriculture, Food and Markets"
	waLaw     = "RCW 15.54.500"
	waAgency  = "Washington State Department of Agriculture"
	wiLaw     = "Wis. Stat. § 94.643"
	wiAgency  = "Wisconsin Department of Agriculture, Trade and Consumer Protection"
	wvLaw     = "W. Va. Code R. § 61-22B-4"
	wvAgency  = "West Virginia Department of Agriculture"
)

// westernBasin are the counties with land in the western Lake Erie basin, from memory; the
// statute names watersheds. There are 24, as the rows say.
var westernBasin = []string{"Allen", "Auglaize", "Crawford", "Defiance", "Erie", "Fulton", "Hancock", "Hardin", "Henry", "Huron", "Lucas",
	"Marion", "Mercer", "Ottawa", "Paulding", "Putnam", "Richland", "Sandusky", "Seneca", "Shelby", "Van Wert", "Williams", "Wood", "Wyandot"}

var rulesOHtoWV = []Rule{
	// Ohio
	{ID: "oh-frozen-ground", State: "OH", Kind: GroundState, Binding: BindsUse,
		Nutrients: Nitrogen | Phosphorus, Ground: Frozen | Snow | Saturated, Unless: GrowingCrop | WorkedIn, Scope: "western Lake Erie basin (24 counties or parts)", Extent: InBasin, Counties: westernBasin,
		Citation: ohLaw, Agency: ohAgency, InForce: "2015-07-03", AsOf: "2024-01", How: Seen, Confidence: LowConfidence,
		Note: "Anyone there who spreads nitrogen or phosphorus on the surface must keep it, except on a growing crop. No text read says whether turf is a growing crop: keep it on lawns in the basin."},
	{ID: "oh-rain", State: "OH", Kind: HeavyRain, Binding: BindsUse,
		Nutrients: Nitrogen | Phosphorus, Unless: GrowingCrop | WorkedIn, Scope: "western Lake Erie basin (24 counties or parts)", Extent: InBasin, Counties: westernBasin,
		Citation: ohLaw, Agency: ohAgency, InForce: "2015-07-03", AsOf: "2024-01", How: Seen, Confidence: LowConfidence,
		Note: "For granular products, if the forecast gives more than a 50 % chance of over 1 in of rain within 12 hours."},

	// Pennsylvania
	{ID: "pa-n-cap-per-application", State: "PA", Kind: NitrogenDose, Binding: BindsUse,
		Value: 0.9, Unless: EnhancedSource,
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "Enhanced-efficiency nitrogen may exceed it if no more than 0.7 lb is released at a time. A written site plan may set other rates."},
	{ID: "pa-n-soluble-cap-per-application", State: "PA", Kind: SolubleDose, Binding: BindsUse,
		Value:    0.7,
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence},
	{ID: "pa-n-cap-per-application-2", State: "PA", Kind: NitrogenDose, Binding: BindsUse,
		When: Span{MonthDay{12, 16}, MonthDay{2, 29}}, Value: 0.5,
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "After 15 Dec and before 1 Mar, or as a later department rule says. Summaries from 2022 give a complete winter ban, which has since been removed. It is safest to plan nothing in these weeks."},
	{ID: "pa-p-soil-test-required", State: "PA", Kind: PhosphorusReport, Binding: BindsUse,
		doubt: askIfShut, Unless: NewLawn | RepairWork | OrganicSource,
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: MediumConfidence,
		Note: "Products labeled for new lawns or repair are allowed, and so are organic sources within the limits. A soil report is not among the exceptions read, though a 2022 news column names one. A university column of 2023 describes a written site plan as another way. Ask."},
	{ID: "pa-p-cap-per-application", State: "PA", Kind: PhosphorusDose, Binding: BindsUse,
		Value: 0.25, Only: OrganicSource | EnhancedSource, Scope: "organic and enhanced-efficiency sources",
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "The statute says phosphorus. A university column reads that as the element (0.57 lb P₂O₅); the department writes phosphate beside the figure. It is read here as P₂O₅, the smaller amount."},
	{ID: "pa-p-annual-cap", State: "PA", Kind: PhosphorusYear, Binding: BindsUse,
		Value: 0.5, Only: OrganicSource | EnhancedSource, Scope: "organic and enhanced-efficiency sources",
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "The statute says phosphorus. A university column reads that as the element (0.57 lb P₂O₅); the department writes phosphate beside the figure. It is read here as P₂O₅, the smaller amount."},
	{ID: "pa-frozen-ground", State: "PA", Kind: GroundState, Binding: BindsUse,
		Nutrients: Nitrogen | Phosphorus, Ground: Frozen | Snow,
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "Frozen means 2 in deep or more."},
	{ID: "pa-impervious", State: "PA", Kind: PavedSurface, Binding: BindsUse,
		Citation: paLaw, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence},
	{ID: "pa-setback-water-ft", State: "PA", Kind: WaterDistance, Binding: BindsUse,
		Value: 15, Unless: StreamBuffer,
		Citation: paLaw2, Agency: paAgency, InForce: "2022-07-11", AsOf: "2023", How: Seen, Confidence: HighConfidence,
		Note: "Measured from the top of the bank of a lake, pond, wetland or stream. To make or maintain a stream buffer, targeted equipment may be used up to the bank."},
	{ID: "pa-slow-release-fraction", State: "PA", Kind: SlowNitrogen, Binding: BindsLabel,
		Value: 0.2, Unless: NewLawn | RepairWork | LiquidForm | AllSoluble,
		Citation: paLaw3, Agency: paAgency, InForce: "2022-07-11", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "For products sold to consumers. Liquid and fully soluble products are exempt if they keep within the limits."},

	// Virginia
	{ID: "va-p-soil-test-required", State: "VA", Kind: PhosphorusReport, Binding: BindsUse,
		doubt: askWithReport, Unless: NewLawn | OrganicSource | LowPhosphate,
		Citation: vaLaw, Agency: vaAgency, InForce: "2013-12-31", AsOf: "2011", How: InPart, Confidence: MediumConfidence,
		Note: "The law covers the sale and use of maintenance fertilizer with phosphorus. Starter fertilizer, manure, compost and biosolids are exempt. Whether a soil report allows phosphorus on an old lawn was not read."},
	{ID: "va-label", State: "VA", Kind: LabelOrSign, Binding: BindsLabel,
		Citation: vaLaw2, Agency: vaAgency, InForce: "2013-12-31", AsOf: "2011", How: InPart, Confidence: MediumConfidence,
		Note: "The bag must warn against use near storm drains and ditches and before heavy rain."},
	{ID: "va-n-soluble-cap-per-application-pro", State: "VA", Kind: SolubleDose, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.7,
		Citation: vaLaw3, Agency: vaAgency2, InForce: "2014", AsOf: "2014", How: FromMemory, Confidence: LowConfidence,
		Note: "Within 30 days. It is a planning standard; for homeowners it is advice."},
	{ID: "va-n-cap-per-application-pro", State: "VA", Kind: NitrogenDose, Binds: PaidOnly, Binding: BindsUse,
		Value:    0.9,
		Citation: vaLaw3, Agency: vaAgency2, InForce: "2014", AsOf: "2014", How: FromMemory, Confidence: LowConfidence},

	// Vermont
	{ID: "vt-n-blackout", State: "VT", Kind: NitrogenClosed, Binding: BindsUse,
		When: Span{MonthDay{10, 16}, MonthDay{3, 31}}, Unless: GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence,
		Note: "No fertilizer of any kind after 15 Oct and before 1 Apr."},
	{ID: "vt-p-blackout", State: "VT", Kind: PhosphorusClosed, Binding: BindsUse,
		When: Span{MonthDay{10, 16}, MonthDay{3, 31}}, Unless: GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence,
		Note: "No fertilizer of any kind after 15 Oct and before 1 Apr."},
	{ID: "vt-k-blackout", State: "VT", Kind: PotassiumClosed, Binding: BindsUse,
		When: Span{MonthDay{10, 16}, MonthDay{3, 31}}, Unless: GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence,
		Note: "No fertilizer of any kind after 15 Oct and before 1 Apr."},
	{ID: "vt-p-soil-test-required", State: "VT", Kind: PhosphorusReport, Binding: BindsUse,
		LowP2O5Percent: 0.67, ReportMonths: 18, NewSeasons: 1, Unless: SoilTest | NewLawn | OrganicSource | GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence,
		Note: "No other state in this table requires a newer report. Starter fertilizer must be labeled as such. Compost and manipulated manure are exempt."},
	{ID: "vt-slow-release-fraction", State: "VT", Kind: SlowNitrogen, Binding: BindsUse,
		Value: 0.15, Unless: GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence,
		Note: "Turf fertilizer with a smaller slow-release share may not be used."},
	{ID: "vt-setback-water-ft", State: "VT", Kind: WaterDistance, Binding: BindsUse,
		Value: 25, Unless: GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence,
		Note: "It applies to any fertilizer; no shorter distance was found."},
	{ID: "vt-impervious", State: "VT", Kind: PavedSurface, Binding: BindsUse,
		Unless:   FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: Seen, Confidence: HighConfidence},
	{ID: "vt-frozen-ground", State: "VT", Kind: GroundState, Binding: BindsUse,
		Ground: Frozen, Unless: GolfCourse | FarmLand,
		Citation: vtLaw, Agency: vtAgency, InForce: "2012-01-01", AsOf: "2015", How: InPart, Confidence: LowConfidence},

	// Washington
	{ID: "wa-p-soil-test-required", State: "WA", Kind: PhosphorusReport, Binding: BindsUse,
		ReportMonths: 36, NewSeasons: 1, Unless: SoilTest | NewLawn | RepairWork | FarmLand,
		Citation: waLaw, Agency: waAgency, InForce: "2013-01-01", AsOf: "2025-01", How: Seen, Confidence: HighConfidence,
		Note: "The law covers turf fertilizer labeled as containing phosphorus. Repair counts in the season in which the grass is established."},
	{ID: "wa-frozen-ground", State: "WA", Kind: GroundState, Binding: BindsUse,
		Nutrients: Phosphorus, Ground: Frozen,
		Citation: waLaw, Agency: waAgency, InForce: "2013-01-01", AsOf: "2025-01", How: Seen, Confidence: HighConfidence,
		Note: "For products with phosphorus there is no exception, not even with a soil report."},
	{ID: "wa-impervious", State: "WA", Kind: PavedSurface, Binding: BindsUse,
		Nutrients: Phosphorus,
		Citation:  waLaw, Agency: waAgency, InForce: "2013-01-01", AsOf: "2025-01", How: Seen, Confidence: HighConfidence,
		Note: "The law names products with phosphorus that are spread on paving on purpose."},

	// Wisconsin
	{ID: "wi-p-soil-test-required", State: "WI", Kind: PhosphorusReport, Binding: BindsUse,
		ReportMonths: 36, NewSeasons: 1, Unless: SoilTest | NewLawn | FarmLand,
		Citation: wiLaw, Agency: wiAgency, InForce: "2010-04-01", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "A new lawn is one sown or sodded this season. Repair of an old lawn is no exception."},
	{ID: "wi-frozen-ground", State: "WI", Kind: GroundState, Binding: BindsUse,
		Ground:   Frozen,
		Citation: wiLaw, Agency: wiAgency, InForce: "2010-04-01", AsOf: "2024", How: Seen, Confidence: HighConfidence,
		Note: "Manipulated manure and finished sewage sludge count too."},
	{ID: "wi-impervious", State: "WI", Kind: PavedSurface, Binding: BindsUse,
		Citation: wiLaw, Agency: wiAgency, InForce: "2010-04-01", AsOf: "2024", How: Seen, Confidence: HighConfidence},

	// West Virginia
	{ID: "wv-frozen-ground", State: "WV", Kind: GroundState, Binding: Advises,
		Nutrients: Nitrogen, Ground: Frozen | Snow | Saturated,
		Citation: wvLaw, Agency: wvAgency, InForce: "1995", AsOf: "2024-12", How: Seen, Confidence: MediumConfidence,
		Note: "A rule of practice for groundwater. It is worded as advice and does not name lawns. It also asks for 50 ft from a wellhead. The year in force is from memory."},
}
