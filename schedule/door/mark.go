package door

// Mark stands in a planner, so that one of another release is told from ours. It ends
// with plan.Release.
const Mark = "swardbook planner of release 1"
