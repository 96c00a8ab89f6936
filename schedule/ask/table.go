package ask

import "strings"

// table numbers the keys that an address may carry, as codes in the world do already:
// lines are added at its end and never moved or taken away. A * stands for a name of the
// writer's choice. The first are the ones that nearly every lawn has.
var table = strings.Fields(`
title start place.zip
area.*.size area.*.grass area.*.seeded area.*.care area.*.clippings area.*.texture
area.*.soil.sampled area.*.soil.method area.*.soil.ph area.*.soil.buffer.method area.*.soil.buffer.ph
area.*.soil.phosphorus area.*.soil.potassium area.*.soil.magnesium area.*.soil.calcium
material.*.kind material.*.analysis material.*.pack material.*.on_hand material.*.name
record.*.date record.*.kind record.*.material record.*.amount
area.*.name area.*.grass.* area.*.soil.received area.*.soil.depth area.*.soil.cec area.*.soil.organic_matter
material.*.cce material.*.ecce material.*.slow_share material.*.lasts material.*.price
crew.days units

through
place.county place.state place.hardiness place.elevation place.latitude place.longitude
place.mean_high_f place.mean_low_f place.mean_high_c place.mean_low_c
place.first_freeze place.last_freeze place.water_within
crew.paid crew.away crew.jobs_per_day crew.people.* crew.absent.* crew.who.*
area.*.dormant area.*.sprinkler area.*.soluble_only area.*.cored
area.*.soil.target_ph area.*.soil.acidity area.*.soil.sulfur area.*.soil.sodium area.*.soil.iron
area.*.soil.phosphorus.found area.*.soil.phosphorus.wanted area.*.soil.potassium.found area.*.soil.potassium.wanted
area.*.soil.calcium.found area.*.soil.calcium.wanted area.*.soil.magnesium.found area.*.soil.magnesium.wanted
area.*.soil.sulfur.found area.*.soil.sulfur.wanted area.*.soil.sodium.found area.*.soil.sodium.wanted
area.*.soil.iron.found area.*.soil.iron.wanted
area.*.soil.*.received area.*.soil.*.depth area.*.soil.*.method area.*.soil.*.ph
area.*.soil.*.buffer.method area.*.soil.*.buffer.ph area.*.soil.*.target_ph area.*.soil.*.acidity
area.*.soil.*.cec area.*.soil.*.organic_matter area.*.soil.*.sampled
area.*.soil.*.phosphorus area.*.soil.*.potassium area.*.soil.*.calcium area.*.soil.*.magnesium
area.*.soil.*.sulfur area.*.soil.*.sodium area.*.soil.*.iron
area.*.soil.*.phosphorus.found area.*.soil.*.phosphorus.wanted area.*.soil.*.potassium.found area.*.soil.*.potassium.wanted
area.*.soil.*.calcium.found area.*.soil.*.calcium.wanted area.*.soil.*.magnesium.found area.*.soil.*.magnesium.wanted
area.*.soil.*.sulfur.found area.*.soil.*.sulfur.wanted area.*.soil.*.sodium.found area.*.soil.*.sodium.wanted
area.*.soil.*.iron.found area.*.soil.*.iron.wanted
material.*.fineness.* material.*.hydrated material.*.form material.*.density material.*.magnesium material.*.sulfur
material.*.pesticide material.*.counted material.*.rebuy
local.no_nitrogen local.no_phosphorus local.max_n_per_application local.note
sprayer.tank sprayer.covers spreader.width
record.*.area record.*.season record.*.n record.*.analysis record.*.slow record.*.lime_value record.*.of
record.*.by record.*.note record.*.job

area.*.soil.lower_ph area.*.soil.lb_per_acre_depth area.*.soil.lime area.*.soil.lime_ecce area.*.soil.nitrogen area.*.soil.phosphate area.*.soil.potash
area.*.soil.*.lower_ph area.*.soil.*.lb_per_acre_depth area.*.soil.*.lime area.*.soil.*.lime_ecce area.*.soil.*.nitrogen area.*.soil.*.phosphate area.*.soil.*.potash
material.*.iron crew.budget area.*.overseed
`)
