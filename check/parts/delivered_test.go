package parts_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.org/tundish/check/parts"
)

func delivered(t *testing.T, name string) []parts.Item {
	t.Helper()
	b, err := os.ReadFile("../../testdata/delivered/" + name)
	if err != nil {
		t.Fatal(err)
	}
	items, problems := parts.ReadDelivered(b)
	for _, p := range problems {
		t.Error(p.Error())
	}
	return items
}

func TestCompleteDelivery(t *testing.T) {
	list := parts.Of(example(t, "back-to-back"))
	for _, d := range parts.Compare(list, delivered(t, "complete.csv")) {
		t.Errorf("%s: %s %s %g", d.Kind, d.Name, d.Size, d.Quantity)
	}
}

// The file with three seeded faults gives exactly these.
func TestThreeFaults(t *testing.T) {
	list := parts.Of(example(t, "back-to-back"))
	want := []string{
		"surplus: automatic air vent DN15 by 2",
		"short: gasket DN150 by 1",
		"wrong size: flue seal DN400 by 3 as DN350",
	}
	var got []string
	for _, d := range parts.Compare(list, delivered(t, "three-faults.csv")) {
		s := fmt.Sprintf("%s: %s %s by %g", d.Kind, d.Name, d.Size, d.Quantity)
		if d.GotSize != "" {
			s += " as " + d.GotSize
		}
		if len(d.Lines) == 0 || len(d.Why) == 0 {
			t.Errorf("%s: without lines or reasons", s)
		}
		got = append(got, s)
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestNothingArrived(t *testing.T) {
	list := parts.Of(example(t, "in-line"))
	diffs := parts.Compare(list, nil)
	kinds := map[string]bool{}
	for _, l := range list.Lines {
		kinds[l.Name+"|"+l.Size] = true
	}
	if len(diffs) != len(kinds) {
		t.Errorf("%d differences for %d kinds of part", len(diffs), len(kinds))
	}
	for _, d := range diffs {
		if d.Kind != parts.Short || d.Quantity != d.Needed {
			t.Errorf("%+v", d)
		}
	}
}

func TestForeignAndUnits(t *testing.T) {
	list := &parts.List{Lines: []parts.Line{{Name: "steel pipe", Size: "DN50", Quantity: 3.048, Unit: "m"}, {Name: "gasket", Size: "DN80", Quantity: 2, Unit: "off"}}}
	got := ""
	for _, d := range parts.Compare(list, []parts.Item{
		{Part: "Steel  Pipe", Size: "dn 50", Quantity: 10, Unit: "ft", Line: 2},
		{Part: "gaskets", Size: "DN80", Quantity: 2, Line: 3},
		{Part: "gasket", Size: "DN80", Quantity: 2, Unit: "m", Line: 4},
	}) {
		got += fmt.Sprintf("%s %s %g %s; ", d.Kind, d.Name, d.Quantity, d.Meant)
	}
	const want = "wrong unit gasket 2 m; short gasket 2 ; not in this plant gaskets 2 gasket; "
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestReadDelivered(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"comma":            {"part,size,quantity\n\"valve, gas\",DN25,8\n", "valve, gas|DN25|8"},
		"semicolon":        {"part;size;quantity\npipe;DN25;4,6 m\n", "pipe|DN25|4.6"},
		"tab":              {"Part\tSize\tQty\ncap\t\t2\n", "cap||2"},
		"bar and crlf":     {"part|size|quantity\r\ncap|DN20|2\r\n\r\n", "cap|DN20|2"},
		"mark":             {"\ufeffpart,size,quantity\ncap,DN20,2\n", "cap|DN20|2"},
		"other order":      {"quantity,package,size,part\n2,P1,DN20,cap\n", "cap|DN20|2"},
		"two pallets":      {"part,size,quantity,package\ncap,DN20,2,P1\ncap,DN20,2,P2\n", "cap|DN20|2 cap|DN20|2"},
		"no line end":      {"part,size,quantity\ncap,DN20,2", "cap|DN20|2"},
		"empty":            {" \n", "the file is empty"},
		"utf-16":           {"\xff\xfep\x00", "UTF-16"},
		"latin":            {"part,size,quantity\nD\xe4mpfer,DN20,2\n", "not in UTF-8"},
		"no size":          {"part,quantity\ncap,2\n", "line 1: the heading has no column size"},
		"no heading":       {"cap,DN20,2\n", "no column part"},
		"other separator":  {"part:size:quantity\ncap:DN20:2\n", "no column part"},
		"column twice":     {"part,name,size,quantity\ncap,x,DN20,2\n", "column part twice"},
		"comma in a cell":  {"part,size,quantity\nvalve, gas,DN25,8\n", "line 2: 4 cells, but the heading has 3; a cell that holds a comma"},
		"duplicate":        {"part,size,quantity\ncap,DN20,2\ncap,DN 20,3\n", "line 3: cap DN 20 stands in line 2 already"},
		"no number":        {"part,size,quantity\ncap,DN20,two\n", `line 2: the quantity "two" of cap is not a number`},
		"not finite":       {"part,size,quantity\ncap,DN20,NaN\n", "is not a number"},
		"below zero":       {"part,size,quantity\ncap,DN20,-2\n", "below zero"},
		"no part":          {"part,size,quantity\n,DN20,2\n", "line 2: the cell part is empty"},
		"unit":             {"part,size,quantity,unit\npipe,DN20,2,yards\n", `the unit "yards"`},
		"quotation":        {"part,size,quantity\ncap,DN20,2\n\"cap,DN25,2\n", "line 3: the quotation marks"},
		"quote in a cell":  {"part,size,quantity\n3\" cap,DN20,2\n", "line 2: the quotation marks"},
		"several problems": {"part,size,quantity\ncap,DN20,x\ncap,DN25\n", "line 3: 2 cells"},
	} {
		items, problems := parts.ReadDelivered([]byte(c.text))
		var out []string
		for _, it := range items {
			out = append(out, fmt.Sprintf("%s|%s|%g", it.Part, it.Size, it.Quantity))
		}
		if len(problems) > 0 {
			out = nil
			for i := range problems {
				out = append(out, problems[i].Error())
			}
		}
		if got := strings.Join(out, " "); !strings.Contains(got, c.want) || len(problems) == 0 && got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

func FuzzReadDelivered(f *testing.F) {
	f.Add([]byte("part,size,quantity\ncap,DN20,2\n"))
	f.Add([]byte("\ufeffpart;size;quantity\n\"a;b\";;1,5 m\n"))
	list := &parts.List{Lines: []parts.Line{{Name: "cap", Size: "DN20", Quantity: 2, Unit: "off"}}}
	f.Fuzz(func(t *testing.T, data []byte) {
		items, problems := parts.ReadDelivered(data)
		if len(problems) == 0 {
			parts.Compare(list, items)
		}
	})
}
