//go:build pages

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// badPage has one of each fault that the pages are looked over for.
const badPage = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>bad</title></head>
<body style="background:#fff;color:#000;margin:0"><section id="s">
<p style="width:60rem">wide</p>
<p style="color:#888">pale</p>
<p style="color:#000;background:linear-gradient(#000,#fff)">on a slope</p>
<p><a href="#nowhere">lost</a></p>
<p style="font-size:6px">small</p>
<figure id="none"><svg width="300" height="100"></svg><figcaption>none</figcaption></figure>
<figure id="full"><div class="scroll"><svg xmlns="http://www.w3.org/2000/svg" width="400" height="300" viewBox="0 0 400 300">
<rect width="400" height="300" fill="#fff"/><rect x="200" y="200" width="120" height="60" fill="#335"/>
<g transform="translate(60 150)"><path d="M-10 -6L10 6V-6L-10 6Z" stroke="#000" fill="#fff"/></g>
<text x="20" y="40" font-size="14">one label</text><text x="60" y="44" font-size="14">another</text>
<text x="380" y="100" font-size="14">beyond the edge</text>
<text x="62" y="152" font-size="14">on a valve</text>
<text x="220" y="235" font-size="14" fill="#224">dark on dark</text>
<path d="M0 0H1M0 1H1M0 2H1M0 3H1M0 4H1M0 5H1" stroke="#000"/><path d="M1 0"/><path d="M1 0"/><path d="M1 0"/><path d="M1 0"/><path d="M1 0"/>
<text x="20" y="280" font-size="14">sixth</text></svg></div><figcaption>full</figcaption></figure>
<figure id="plot"><svg xmlns="http://www.w3.org/2000/svg" width="400" height="100" viewBox="0 0 400 100"><g transform="scale(1,-1) translate(0,-100)">
<path d="M0,50L400,50" fill="none" stroke="#005" stroke-width="2"/><text x="100" y="-46" transform="scale(1,-1)" font-size="14">crossed</text></g></svg></figure>
</section></body></html>`

// What looks the pages over finds what it is to find.
func TestPagesFindFaults(t *testing.T) {
	tab := openBrowser(t)
	p := &shownPage{t: t, name: "bad", ctx: tab(t)}
	p.open(write(t, t.TempDir(), "bad.html", badPage))
	look := func(wide int64, phone bool) string {
		var got struct {
			Faults []string `json:"faults"`
		}
		p.run("looking", chromedp.EmulateViewport(wide, 800), chromedp.Evaluate(fmt.Sprintf("(%s)(%v)", strings.TrimSpace(afterComment(lookOver)), phone), &got))
		return strings.Join(got.Faults, "\n")
	}
	desk, phone := look(1280, false), look(390, true)
	for _, must := range []string{
		"contrast 3.5", "the contrast of a text is not known: s: on a slope", "the link #nowhere leads nowhere", "none is empty",
		`full: "one label" lies over "another"`, `full: "beyond the edge" leaves the drawing`, `full: "on a valve" lies over the edge of a symbol`,
		"of full: dark on dark", `plot: a line runs through "crossed"`, "plot has no caption",
	} {
		if !strings.Contains(desk, must) {
			t.Errorf("not found: %s\n%s", must, desk)
		}
	}
	for _, must := range []string{"in a window of 390", "letters of 6px on a phone"} {
		if !strings.Contains(phone, must) {
			t.Errorf("not found on the phone: %s\n%s", must, phone)
		}
	}
}
