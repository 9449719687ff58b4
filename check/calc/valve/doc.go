// Package valve computes flow coefficients of valves, orifices, safety valves
// and their discharge pipes. It knows nothing of plants.
//
// Pressures are in Pa absolute in orifices and flow coefficients; the sums of
// safety valves keep the units of their source, named in every argument. A
// valve that passes a sum here is still no permission to fire.
package valve
