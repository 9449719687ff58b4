// Package vessel sizes expansion vessels of sealed heating plants and puts
// their pressures in order. It knows nothing of plants or of the properties of
// water: the caller gives the expansion and the vapor pressure.
//
// Pressures are in bar gauge and volumes in liters but for the US methods,
// which keep psi absolute and gallons.
package vessel
