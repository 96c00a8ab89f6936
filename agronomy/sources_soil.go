package agronomy

// soilSources are the references behind readings, levels, needs and nitrogen.
var soilSources = map[string]Source{
	"slan-sheet": {
		Cite:  "A trade soil-test interpretation sheet (2021) reprinting SLAN ranges from Carrow et al. 2003b and MLSN from Woods et al. 2016, with a SAR example.",
		Where: "online.flippingbook.com/view/395169/32",
		How:   "seen",
	},
	"woods-paper-code": {
		Cite:  "Woods, M., Stowell, L. & Gelernter, W. 2016. Minimum soil nutrient guidelines for turfgrass developed from Mehlich 3 soil test results (PeerJ Preprints), table 1: conventional guideline column from Carrow et al. 2004, Clarifying soil testing III.",
		Where: "github.com/micahwoods/2016_mlsn_paper (r/table1.R)",
		How:   "seen",
	},
	"mlsn-2014": {
		Cite:  "PACE Turf & Asian Turfgrass Center. Minimum levels for sustainable nutrition soil guidelines, reference sheet, September 2014.",
		Where: "m.moam.info/reference-pace-turf_647a4cf3097c4770028cb00e.html",
		How:   "seen",
	},
	"mlsn-manual": {
		Cite:  "Woods, M. The Secret MLSN Operations Manual (web book), chapters 2 and 5.",
		Where: "micahwoods.github.io/mlsn_manual",
		How:   "seen",
	},
	"mlsn-k-2to1": {
		Cite:  "Woods, M. Every spring when the snow melts (web article): N:K supply ratios by grass; potassium and snow mold.",
		Where: "www.asianturfgrass.com/post/every-spring-when-the-snow-melts/",
		How:   "seen",
	},
	"rutgers-levels": {
		Cite:  "Rutgers NJAES Soil Testing Laboratory. Relative levels of nutrients (Mehlich-3).",
		Where: "njaes.rutgers.edu/soil-testing-lab/relative-levels-of-nutrients.php",
		How:   "seen",
	},
	"uga-sod-769": {
		Cite:  "University of Georgia AESL crop sheet 769, sod production, centipedegrass (Mehlich-1 bands).",
		Where: "aesl.ces.uga.edu/scripts/crop.prg?769",
		How:   "seen",
	},
	"wsu-fs058e": {
		Cite:  "Washington State University Extension. Phosphorus and home lawns: quick facts and recommendations. FS058E.",
		Where: "doczz.net/doc/3189172 (copy)",
		How:   "part",
	},
	"neb-lab-2007": {
		Cite:  "A commercial soil laboratory in Nebraska: How to interpret a soil-test report, in a turf newsletter, 2007.",
		Where: "a public archive of newsletters (copy)",
		How:   "seen",
	},
	"psu-m3p": {
		Cite:  "Landschoot, P. & Wolf, A. 2011. Five-year summary of Mehlich-3 P data from home lawn soil tests in Pennsylvania. ASA-CSSA-SSSA abstract 103-9.",
		Where: "scisoc.confex.com/scisoc/2011am/webprogram/Paper67178.html",
		How:   "seen",
	},
	"atc-two-datasets": {
		Cite:  "Woods, M. Soil test phosphorus in turf soils: 2 datasets (2015).",
		Where: "www.blog.asianturfgrass.com/2015/04/soil-test-phosphorus-in-turf-soils-2-datasets.html",
		How:   "seen",
	},
	"morgan-ranges": {
		Cite:  "University of Massachusetts Soil and Plant Tissue Testing Laboratory: soil test report S141006-324 (October 2014), modified Morgan optimum ranges.",
		Where: "scribd.com/document/258603620 (copy)",
		How:   "seen",
	},
	"vt-spes384": {
		Cite:  "Bolles, T. Your soil test report simplified. Virginia Cooperative Extension SPES-384.",
		Where: "www.pubs.ext.vt.edu/content/pubs_ext_vt_edu/en/SPES/spes-384/spes-384.html",
		How:   "seen",
	},
	"uga-tissue": {
		Cite:  "University of Georgia AESL. Plant analysis: turfgrasses.",
		Where: "aesl.ces.uga.edu/publications/plant/Turfgrass.html",
		How:   "seen",
	},
	"tx-plantanswers": {
		Cite:  "Texas A&M (Duble, R.). Turf fertilization: total need less soil supply.",
		Where: "www.plantanswers.com/turf/publications/fertil.html",
		How:   "part",
	},
	"cornell-k": {
		Cite:  "Cornell Cooperative Extension of Suffolk County. Potassium (K) (leaflet).",
		Where: "docslib.org/doc/702343 (copy)",
		How:   "seen",
	},
	"slan-mlsn-trial": {
		Cite:  "Guevara, J.L. 2021. Effects of different soil testing philosophies on creeping bentgrass and annual bluegrass putting greens. MSc thesis, Michigan State University (abstract).",
		Where: "d.lib.msu.edu/etd/50076",
		How:   "seen",
	},
	"handbook60": {
		Cite: "Richards, L.A. (ed.) 1954. Diagnosis and improvement of saline and alkali soils. USDA Agriculture Handbook 60.",
		How:  "memory",
	},
	"spectrum-cec": {
		Cite:  "A commercial soil laboratory's article on CEC, buffer pH and percent saturation: CEC by summation.",
		Where: "spectrumanalytic.com/doc/library/articles/cec_bph_and_percent_sat",
		How:   "seen",
	},
	"ill-1995": {
		Cite:  "University of Illinois (Board of Trustees, 1995). Fertilizing: nitrogen by grass and dates by number of pounds a year.",
		Where: "www.oldhouseweb.com/gardening/fertilizing.shtml",
		How:   "seen",
	},
	"ksu-eckert": {
		Cite:  "Eckert, S., K-State Research and Extension. Fertilize at the right time (newspaper column).",
		Where: "www.ruralmessenger.com/kansas-news/horticulture/fertilize-at-the-right-time/",
		How:   "seen",
	},
	"uga-hall": {
		Cite:  "University of Georgia extension column, Gainesville Times: pH and yearly nitrogen by lawn grass.",
		Where: "www.gainesvilletimes.com/columnists/for-fertilizer-application-quantity-and-timing-are-important/",
		How:   "seen",
	},
	"nc-tallfescue": {
		Cite:  "NC State TurfFiles maintenance calendar for tall fescue, as quoted by a garden club, 2014.",
		Where: "durhamcouncilofgardenclubs.blogspot.com/2014/08/",
		How:   "seen",
	},
	"uf-fyn": {
		Cite:  "University of Florida. A guide to Florida-friendly landscaping, Table 2 (from EDIS EP221).",
		Where: "www.yumpu.com/en/document/view/30608282 (copy)",
		How:   "seen",
	},
	"uf-enh73": {
		Cite:  "McCarty, L.B. & Cisar, J.L. 1995. Yearly calendar for St. Augustinegrass care and culture. UF/IFAS ENH-73.",
		Where: "docslib.org/doc/2582559 (copy)",
		How:   "seen",
	},
	"umn-2023": {
		Cite:  "University of Minnesota Turfgrass Science. Home lawn care newsletter, September 2023.",
		Where: "turf.umn.edu/home-lawn-care-newsletter-september-2023",
		How:   "seen",
	},
	"umn-2012": {
		Cite:  "University of Minnesota Extension (Bauer, S.) 3 October 2012. Apply fall lawn fertilizer by mid-October; and Rethinking late-fall nitrogen fertility for home lawns.",
		Where: "discover.umn.edu/news/environment/apply-fall-lawn-fertilizer-mid-october-u-m-extension-says",
		How:   "seen",
	},
	"az-1995": {
		Cite:  "Kopec, D.M. Fall turf fertilization for cool season grasses. University of Arizona Turf Tips, August 1995.",
		Where: "turf.arizona.edu/tips895.html",
		How:   "seen",
	},
	"ksu-warm": {
		Cite:  "Kansas State University, Turf and Landscape Blog. Time to think about managing your warm-season home lawn: bermudagrass from early May to 15 August, zoysiagrass early June and mid-July, buffalograss early June.",
		Where: "blogs.k-state.edu/turf/time-to-think-about-managing-your-warm-season-home-lawn/",
		How:   "seen",
	},
	"unl-g2178": {
		Cite:  "Reicher, Z.J. and others (University of Nebraska-Lincoln). Buffalograss Management Calendar. NebGuide G2178, 2012.",
		Where: "extensionpubs.unl.edu/publication/g2178/2012/html/view",
		How:   "part",
	},
	"tn-hozer": {
		Cite:  "Hozer, C.R., Crossville Chronicle, 14 April 2014, after University of Tennessee PB1038: cool-season fertilizing dates.",
		Where: "crossville-chronicle.com/features/x749157580",
		How:   "seen",
	},
	"uga-coastal": {
		Cite:  "University of Georgia coastal garden. Want a better lawn next year? Start now, September 2023: no nitrogen from September to November.",
		Where: "coastalbg.uga.edu/2023/09/want-a-better-lawn-next-year-start-now/",
		How:   "seen",
	},
	"uf-winter": {
		Cite:  "University of Florida IFAS. Winterizing your lawn: the last fertilizer in September in the north, in October in central Florida.",
		Where: "gardeningsolutions.ifas.ufl.edu/giam/plants_and_grasses/grasses_lawncare/winterizing.html",
		How:   "seen",
	},
	"nc-macon": {
		Cite:  "NC State Extension, Macon County, September 2019. Fall care for your lawn; and Henderson County, Caring for your lawn.",
		Where: "macon.ces.ncsu.edu/2019/09/fall-lawn-care-6/ ; henderson.ces.ncsu.edu/caringforyourlawn/",
		How:   "seen",
	},
	"unl-calc": {
		Cite:  "University of Nebraska-Lincoln, Backyard Farmer. Lawn fertilizer calculations.",
		Where: "byf.unl.edu/LawnFertCalc",
		How:   "seen",
	},
	"unl-fall": {
		Cite:  "University of Nebraska extension column, 29 August 2021: fall nitrogen for Kentucky bluegrass and tall fescue.",
		Where: "theindependent.com",
		How:   "seen",
	},
	"unl-fech-2018": {
		Cite:  "Fech, J., University of Nebraska-Lincoln, 11 October 2018. Late fall fertilizer timing.",
		Where: "grobigred.com/2018/10/11/late-fall-fertilizer-timing/",
		How:   "seen",
	},
	"lsu-strahan": {
		Cite:  "Strahan, R., LSU AgCenter (newspaper column): summer nitrogen by grass, product arithmetic.",
		Where: "www.theadvocate.com",
		How:   "seen",
	},
	"soldat-fall": {
		Cite:  "Soldat, D. (University of Wisconsin-Madison), interview: Rethinking fall soluble nitrogen fertilization of cool-season grasses. Golfdom.",
		Where: "www.golfdom.com/rethinking-fall-soluble-nitrogen-fertilization-of-cool-season-grasses/",
		How:   "seen",
	},
	"bauer-2012": {
		Cite:  "Bauer, S., Lloyd, D., Horgan, B.P. & Soldat, D.J. 2012. Agronomic and physiological responses of cool-season turfgrass to fall-applied nitrogen. Crop Science 52 (review).",
		Where: "doi.org/10.2135/cropsci2011.03.0124 ; tic.msu.edu/tgif record 195945",
		How:   "part",
	},
	"osu-late-2015": {
		Cite:  "Ohio State University, athletic field management site, 24 November 2015: benefits of late season fertilizer.",
		Where: "u.osu.edu/athleticfieldmanagement/2015/11/24/",
		How:   "seen",
	},
	"purdue-latefall": {
		Cite:  "Patton, A. (Purdue). Late fall fertilization. SportsField Management, 28 October 2013.",
		Where: "sportsfieldmanagementonline.com/2013/10/28/late-fall-fertilization/566/",
		How:   "seen",
	},
	"uconn-clippings": {
		Cite:  "Guillard, K., University of Connecticut. Sustainable landscaping, turf: leave clippings on lawn; slow-release formulations.",
		Where: "sustainability.uconn.edu/sustain/turf/07.html",
		How:   "seen",
	},
	"gp-code": {
		Cite:  "Woods, M. Growth potential scripts: C3 20 C and 5.5, C4 31 C and 7, C4 held at 1 above 31 C.",
		Where: "github.com/micahwoods/gp_inflection (r/full_time_series.R)",
		How:   "seen",
	},
	"gp-grounds": {
		Cite:  "Gelernter, W. & Stowell, L. Predicting turf performance. Grounds Maintenance magazine.",
		Where: "grounds-mag.com/mag/grounds_maintenance_predicting_turf_performance/",
		How:   "seen",
	},
	"gp-pace": {
		Cite:  "PACE Turf. Modified warm season growth potential model; Turf growth potentials: a tool with many uses.",
		Where: "www.paceturf.org/gallery/detail/modified-warm-season-gp-model",
		How:   "seen",
	},
	"ny-nmp-2019": {
		Cite:  "Menchyk, N. 2019. Nutrient management planning for New York State golf courses. New York Golf Course Foundation, page 4, Figure 5: growth potential by month, Kings Park, N and the other elements.",
		Where: "nygcf.com/nysgolfbmp_com/nutrient_management_planning_2019/6",
		How:   "seen",
	},
	"uc-starter": {
		Cite:  "University of California IPM. Turf: starter fertilizers.",
		Where: "ipm.ucanr.edu/TOOLS/TURF/SITEPREP/strtfert.html",
		How:   "seen",
	},
	"unl-renovate": {
		Cite:  "University of Nebraska extension column, York News-Times, 24 August 2021: renovating lawns in the fall.",
		Where: "yorknewstimes.com",
		How:   "seen",
	},
	"purdue-p": {
		Cite:  "Purdue Turfgrass Science. Phosphorus fertilization in turf (turf tip).",
		Where: "turf.purdue.edu/phosphorus-fertilization-in-turf/",
		How:   "part",
	},
	"psu-establish": {
		Cite:  "Penn State. Turfgrass establishment (fact sheet).",
		Where: "plantscience.psu.edu/research/centers/turf/extension/factsheets/establishment",
		How:   "part",
	},
	"garden-germ": {
		Cite:  "Home-garden pages: germination days and seedling feed (quoting University of Minnesota for 1/2 lb N); lawn care in south Georgia (seeding rates).",
		Where: "98905.com/garden-lawn/growing-grass/4416.html ; verypages.com/articles_0e0tga.html",
		How:   "seen",
	},
	"gcm-p-seeding": {
		Cite:  "Do I need to add phosphorus when seeding? Golf Course Management (research column): review of seeding trials from 1969 on.",
		Where: "gcmonline.com/course/profiles/news/do-i-need-to-add-phosphorus-when-seeding",
		How:   "part",
	},
	"psu-urea-2018": {
		Cite:  "Penn State. Nitrogen recovery and loss from Kentucky bluegrass fertilized by conventional or enhanced-efficiency urea granules. Agronomy 2018, 8(8):144.",
		Where: "doi.org/10.3390/agronomy8080144",
		How:   "seen",
	},
	"md-ag-6-224": {
		Cite:  "Maryland Code, Agriculture, section 6-224 (turf fertilizer).",
		Where: "Maryland statutes",
		How:   "seen",
	},
	"rutgers-spreader": {
		Cite:  "Rutgers Snyder Farm. Fertilizer spreader calibration: New Jersey limit and half rate in two passes.",
		Where: "snyderfarm.rutgers.edu/fertspreader2.html",
		How:   "seen",
	},
	"ny-lawn": {
		Cite:  "New York lawn fertilizing leaflet, 2012: at most 1 lb N per 1000 sq ft an application; pH 6.0-7.5; lime at 6.0 or lower.",
		Where: "online.documentine.com/best-lawn-fertilizer/1/how-best-to-fertilize-your-lawn-111312.html (copy)",
		How:   "seen",
	},
	"uf-ep236": {
		Cite:  "Trenholm, L.E. Homeowner best management practices for the home lawn. UF/IFAS ENH979 (EP236).",
		Where: "edis.ifas.ufl.edu/ep236",
		How:   "seen",
	},
	"osu-fg47": {
		Cite:  "Oregon State University. Fertilizer guide FG 47, Turf grass, revised June 1979.",
		Where: "studylib.net/doc/13854529 (copy)",
		How:   "part",
	},
	"az-iron": {
		Cite:  "Kopec, D.M. Iron: some rusty facts. University of Arizona, February 1998; and Going green, nitrogen and iron deficiencies in turfgrass, 2015.",
		Where: "turf.arizona.edu/tips298.html",
		How:   "seen",
	},
	"psu-fert-copy": {
		Cite:  "Penn State. Turfgrass fertilization, phosphorus section (read in a copy).",
		Where: "nanturf.com/potassium.html (copy)",
		How:   "seen",
	},
	"psu-report-notes": {
		Cite:  "Penn State AASL. Notes to the report: home lawn to plant / to maintain; commercial turf to plant / to maintain; home garden.",
		Where: "agsci.psu.edu/aasl/online-report/home-lawn-maintain (and sister pages)",
		How:   "seen",
	},
	"uconn-lawn-practices": {
		Cite:  "UConn Soil Nutrient Analysis Laboratory. Suggested fertilizer practices for lawns.",
		Where: "soiltesting.cahnr.uconn.edu/suggested-fertilizer-practices-for-lawns",
		How:   "part",
	},
	"askhrgreen": {
		Cite:  "Hampton Roads (Virginia) localities with Virginia Cooperative Extension. If you fertilize, have your soil tested.",
		Where: "askhrgreen.org/fertilizing/",
		How:   "seen",
	},
	"umn-lawn-report": {
		Cite:  "University of Minnesota Soil Testing Laboratory. Recommendations (lawn and garden): how to read the report.",
		Where: "soiltest.cfans.umn.edu/recommendations-lawn-garden",
		How:   "seen",
	},
	"soldat-k-2024": {
		Cite:  "Soldat, D. 27 September 2024. Fall fertility may influence winter damage. WinterTurf, University of Minnesota.",
		Where: "winterturf.umn.edu/fall-fertility-may-influence-winter-damage",
		How:   "seen",
	},
	"schlossberg-2022": {
		Cite:  "Schlossberg, M.J. 2022. Temporal recovery of polymer-coated urea-N by Kentucky bluegrass in the field. Horticulturae 8:207.",
		Where: "www.mdpi.com/2311-7524/8/3/207",
		How:   "seen",
	},
	"nc-centipede": {
		Cite:  "NC State Extension. Centipedegrass lawn maintenance calendar: no nitrogen from March to May; iron sulfate, 2 oz in water per 1000 sq ft, on yellow turf.",
		Where: "content.ces.ncsu.edu/centipedegrass-lawn-maintenance-calendar",
		How:   "part",
	},
	"ndsu-gypsum": {
		Cite:  "North Dakota State University. Gypsum requirement web application, after Oster, J.D. et al. 1999. As printed, with the exchangeable sodium in percent, the equation is 100 times too large: it needs a fraction.",
		Where: "ndsu.edu/pubweb/soils/GypsumRequirementWebApp",
		How:   "seen",
	},
	"sodic-gypsum": {
		Cite:  "Ali, M.H. 2011. Practices of irrigation and on-farm water management, volume 2, p. 344: 1.7 tons of pure gypsum an acre-foot for each meq of sodium (page and title seen in a web copy; author, year and volume from memory).",
		Where: "what-when-how.com (copy)",
		How:   "seen",
	},
	"rhs-acidify": {
		Cite:  "Royal Horticultural Society. Acidifying soil: amounts.",
		Where: "rhs.org.uk/soil-composts-mulches/acidifying-soil",
		How:   "seen",
	},
}
