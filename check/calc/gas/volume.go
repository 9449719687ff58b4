package gas

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// PrintedVolume is the volume of a pipe per meter as the trade's tables print
// it; in small steel sizes it is up to 17 % above that of the bore.
type PrintedVolume struct {
	Material string  // "steel" or "copper"
	Size     string  // "DN15", "15 mm"
	PerMeter float64 // m3/m
	Source   cite.Source
}

var printedVolumes = [...]PrintedVolume{
	{"steel", "DN15", 0.00024, SourceSmallVolumes},
	{"steel", "DN20", 0.00046, SourceSmallVolumes},
	{"steel", "DN25", 0.00064, SourceSmallVolumes},
	{"steel", "DN32", 0.0011, SourceSmallVolumes},
	{"steel", "DN40", 0.00138, SourceGeometry},
	{"steel", "DN50", 0.00222, SourceGeometry},
	{"steel", "DN65", 0.00373, SourceGeometry},
	{"steel", "DN80", 0.00514, SourceGeometry},
	{"steel", "DN100", 0.00871, SourceGeometry},
	{"steel", "DN125", 0.0132, SourceGeometry},
	{"steel", "DN150", 0.0189, SourceGeometry},
	{"copper", "15 mm", 0.00014, SourceSmallVolumes},
	{"copper", "22 mm", 0.00032, SourceSmallVolumes},
	{"copper", "28 mm", 0.00054, SourceSmallVolumes},
	{"copper", "35 mm", 0.00084, SourceSmallVolumes},
}

// VolumePrinted is the printed volume of a pipe per meter.
func VolumePrinted(material, size string) (PrintedVolume, bool) {
	for i := range printedVolumes {
		if printedVolumes[i].Material == material && printedVolumes[i].Size == size {
			return printedVolumes[i], true
		}
	}
	return PrintedVolume{}, false
}

// PipeVolume is the volume in m3 of a pipe of a bore and a length in m.
//
//	V = pi/4 D^2 L
//
// Source: SourceGeometry.
func PipeVolume(bore, length float64) (float64, error) {
	if err := within.Range("bore", bore, leastBore, mostBore, "m"); err != nil {
		return 0, err
	}
	if err := within.Range("length", length, 0, mostLength, "m"); err != nil {
		return 0, err
	}
	return math.Pi / 4 * bore * bore * length, nil
}

const (
	fittingsVolume = 1.1  // on the pipes; source: SourceInstallationVolume
	mostVolume     = 1000 // m3
)

// InstallationVolume is the volume in m3 of an installation from that of its
// pipes and its meter.
//
//	IV = 1.1 x pipes + meter
//
// Both from 0 to 1000 m3. Source: SourceInstallationVolume.
func InstallationVolume(pipes, meter float64) (float64, error) {
	if err := within.Range("volume of the pipes", pipes, 0, mostVolume, "m3"); err != nil {
		return 0, err
	}
	if err := within.Range("volume of the meter", meter, 0, mostVolume, "m3"); err != nil {
		return 0, err
	}
	return fittingsVolume*pipes + meter, nil
}
