package agronomy

// materialSources are the references behind the figures for doses, spreading,
// watering in, timing and sampling. References that other parts also cite are
// listed there.
var materialSources = map[string]Source{
	"cornell-sampling": {
		Cite:  "Cornell Cooperative Extension, Herkimer County. Soil sampling.",
		Where: "blogs.cornell.edu/cceherkimer/programs/agriculture/horticulture/soil-sampling/",
		How:   "seen",
	},
	"csu-sampling": {
		Cite:  "Colorado State University. Extension answer 137408, 2013: sampling depth for lawns.",
		Where: "ask.extension.org/questions/137408",
		How:   "seen",
	},
	"drop-spreader-cr": {
		Cite: "A consumer magazine's check of drop spreaders, October 2006: half a pound on 50 sq ft is 10 lb per 1000 sq ft.",
		How:  "seen",
	},
	"germ-soil-temp": {
		Cite:  "Home-garden page on soil temperature for germination of cool-season and warm-season grass; figures as extension services print them.",
		Where: "98905.com/garden-lawn/lawn-planting/46965.html",
		How:   "seen",
	},
	"ksu-mf2311": {
		Cite:  "Kansas State University. Turfgrass: a guide to turfgrass nutrient recommendations based on K-State soil test results. Horticulture Report MF-2311.",
		Where: "online.documentine.com/potassium-for-lawns/1/horticulture-report-a-guide-to-turfgrass-nutrient.html (copy)",
		How:   "part",
	},
	"mo-sampling": {
		Cite:  "University of Missouri Soil and Plant Testing Laboratory. Garden, landscape and lawn soil test.",
		Where: "extension.missouri.edu/programs/soil-and-plant-testing-laboratory",
		How:   "seen",
	},
	"nc-sampling": {
		Cite:  "NC State Extension. How to complete a soil sample (video, read as text).",
		Where: "theelectronfiles.com/how-to-complete-a-soil-sample/",
		How:   "seen",
	},
	"purdue-ay18": {
		Cite: "Reicher, Z. & Throssell, C. Soil testing for lawns. Purdue University AY-18.",
		How:  "part",
	},
	"purdue-sampling": {
		Cite: "Purdue Extension, newspaper column. Soil testing for lawns and gardens.",
		How:  "seen",
	},
	"purdue-uan": {
		Cite:  "Camberato, J. 17 January 2023. Basic calculations for nitrogen fertilizers. Purdue University, in a farm paper.",
		Where: "www.farmprogress.com/soil-health/basic-calculations-for-nitrogen-fertilizers",
		How:   "seen",
	},
	"reeves-spreader": {
		Cite:  "Reeves, W. Spreader calibration over 1000 sq ft. Georgia.",
		Where: "archive.gaurbanag.org/?p=4144",
		How:   "seen",
	},
	"sportsturf-2016": {
		Cite:  "Slow- and controlled-release nitrogen. SportsTurf, February 2016.",
		Where: "read.dmtmag.com/i/628092-february-2016/12",
		How:   "seen",
	},
	"titko-1987": {
		Cite:  "Titko, S., Street, J.R. & Logan, T.J. 1987. Volatilization of ammonia from granular and dissolved urea applied to turfgrass. Agronomy Journal 79:535-540.",
		Where: "dl.sciencesocieties.org/publications/aj/abstracts/79/3/AJ0790030535b",
		How:   "part",
	},
	"umn-spreader": {
		Cite:  "University of Minnesota Extension. Calibrating your spreader.",
		Where: "www.extension.umn.edu/garden/landscaping/maint/selectin_10.html",
		How:   "seen",
	},
	"umn-three-bag": {
		Cite:  "Extension answer 603771, Minnesota: three products combined to meet a report's N, P2O5 and K2O on 3500 sq ft.",
		Where: "ask.extension.org/questions/603771",
		How:   "seen",
	},
	"vt-452-125": {
		Cite:  "Virginia Tech Soil Testing Laboratory. Soil sample information sheet for home lawns, gardens, fruits and ornamentals. 452-125.",
		Where: "www.pdfio.com/k-33421.html (copy)",
		How:   "seen",
	},
	"vt-fall-2008": {
		Cite:  "Goatley, M. 2008. Fall fertility strategies for Virginia's home lawns. Virginia Cooperative Extension newsletter.",
		Where: "www.sites.ext.vt.edu/newsletter-archive/cses/2008-09/FallFertility.html",
		How:   "seen",
	},
	"turf-mag-3n": {
		Cite:  "From soil report to solution, Turf magazine: product for 3 lb N from 20-5-10.",
		Where: "www.turfmagazine.com/turfmagazine/feature/fertilizer-feature-from-soil-report-to-solution/",
		How:   "seen",
	},
}
