//go:build pages

package main

import (
	"bytes"
	"context"
	_ "embed"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	cdplog "github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

//go:embed pages_test.js
var lookOver string

// The pages that people get are opened in a browser at the size of a desk, of a
// phone and of paper. They need Chromium and pdftotext, which .ci/pages sees to.
// TUNDISH_PAGES_KEEP names a folder that keeps pictures and prints to look at.
func TestPages(t *testing.T) {
	tab := openBrowser(t)
	keep := os.Getenv("TUNDISH_PAGES_KEEP")
	dir := t.TempDir()
	type made struct {
		name string
		args []string
	}
	var list []made
	for _, x := range sheetExamples {
		list = append(list, made{x.name, []string{"sheet", "examples/" + x.name + ".plant", "--today", "2026-07-01"}})
	}
	list = append(list,
		made{"changes", []string{"sheet", "examples/in-line.plant", "--against", "examples/back-to-back.plant"}},
		made{"rules", []string{"explain", "--format", "html"}},
		made{"language", []string{"explain", "--language", "--format", "html"}},
	)
	for _, m := range list {
		t.Run(m.name, func(t *testing.T) {
			file := filepath.Join(dir, m.name+".html")
			if _, errs, code := tundish(t, "", append(m.args, "-o", file)...); code != exitClean {
				t.Fatalf("exit %d: %s", code, errs)
			}
			p := &shownPage{t: t, name: m.name, keep: keep, ctx: tab(t), sheet: m.args[0] == "sheet"}
			p.open(file)
			p.look("desk", 1280, 900, false)
			p.look("phone", 390, 844, true)
			if m.name == "back-to-back" {
				p.follow()
			}
			p.print("A4", 210/25.4, 297/25.4)
			p.print("Letter", 8.5, 11)
		})
	}
}

// openBrowser starts a browser with an empty profile and gives what opens a tab.
func openBrowser(t *testing.T) func(*testing.T) context.Context {
	t.Helper()
	exe := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			exe = p
			break
		}
	}
	if exe == "" {
		t.Fatal("no Chromium to open the pages with")
	}
	profile, err := os.MkdirTemp("", "pages")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { // the browser's last processes may still write when it has ended
		for range 100 {
			if os.RemoveAll(profile) == nil {
				return
			}
			time.Sleep(100 * time.Millisecond)
		}
	})
	alloc, stop := chromedp.NewExecAllocator(context.Background(),
		chromedp.ExecPath(exe), chromedp.UserDataDir(profile), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.WSURLReadTimeout(2*time.Minute),
	)
	t.Cleanup(stop)
	browser, end := chromedp.NewContext(alloc)
	t.Cleanup(end)
	if err := chromedp.Run(browser); err != nil {
		t.Fatalf("starting %s: %v", exe, err)
	}
	return func(t *testing.T) context.Context {
		ctx, shut := chromedp.NewContext(browser)
		t.Cleanup(shut)
		ctx, late := context.WithTimeout(ctx, 10*time.Minute) // guards against a hang alone
		t.Cleanup(late)
		return ctx
	}
}

// shownPage is one page in its tab.
type shownPage struct {
	t          *testing.T
	name, keep string
	ctx        context.Context
	sheet      bool // has a foot with the number of the page

	mu   sync.Mutex
	said []string // errors of the console
}

func (p *shownPage) run(what string, actions ...chromedp.Action) {
	p.t.Helper()
	if err := chromedp.Run(p.ctx, actions...); err != nil {
		p.t.Fatalf("%s: %v", what, err)
	}
}

func (p *shownPage) open(file string) {
	p.t.Helper()
	p.visit((&url.URL{Scheme: "file", Path: file}).String())
}

// visit opens an address and takes what the console says for faults.
func (p *shownPage) visit(address string) {
	p.t.Helper()
	say := func(s string) {
		p.mu.Lock()
		defer p.mu.Unlock()
		p.said = append(p.said, s)
	}
	chromedp.ListenTarget(p.ctx, func(e any) {
		switch e := e.(type) {
		case *runtime.EventExceptionThrown:
			say(e.ExceptionDetails.Error())
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.APITypeError || e.Type == runtime.APITypeWarning {
				say("console." + string(e.Type))
			}
		case *cdplog.EventEntryAdded:
			if e.Entry.Level == cdplog.LevelError || e.Entry.Level == cdplog.LevelWarning {
				say(e.Entry.Text)
			}
		}
	})
	p.run("opening", cdplog.Enable(), chromedp.Navigate(address), chromedp.WaitReady("body"))
	p.t.Cleanup(func() {
		p.mu.Lock()
		defer p.mu.Unlock()
		for _, s := range p.said {
			p.t.Errorf("the console says: %s", s)
		}
	})
}

// look lays the page out in a window and looks for faults.
func (p *shownPage) look(size string, wide, high int64, phone bool) {
	p.t.Helper()
	opts := []chromedp.EmulateViewportOption{}
	if phone {
		opts = append(opts, chromedp.EmulateMobile, chromedp.EmulateTouch, chromedp.EmulateScale(2))
	}
	began := time.Now()
	var got struct {
		Faults  []string `json:"faults"`
		Least   float64  `json:"least"`
		Counted int      `json:"counted"`
	}
	p.run(size, chromedp.EmulateViewport(wide, high, opts...), chromedp.Evaluate(fmt.Sprintf("(%s)(%v)", strings.TrimSpace(afterComment(lookOver)), phone), &got))
	for _, f := range got.Faults {
		p.t.Errorf("%s: %s", size, f)
	}
	p.t.Logf("%s: %d texts, least contrast %.2f, %v", size, got.Counted, got.Least, time.Since(began).Round(time.Millisecond))
	if p.keep != "" && p.name != "rules" && p.name != "language" { // longer than a picture can be
		var shot []byte
		p.run("picture", chromedp.FullScreenshot(&shot, 100))
		p.save(size+".png", shot)
	}
}

// afterComment leaves out the comment on top of the script, which is an expression.
func afterComment(s string) string { return s[strings.Index(s, "(("):] }

// follow clicks the name of a part in a drawing.
func (p *shownPage) follow() {
	p.t.Helper()
	var went struct {
		Hash string  `json:"hash"`
		Top  float64 `json:"top"`
		High float64 `json:"high"`
		Text string  `json:"text"`
	}
	p.run("following a name", chromedp.EmulateViewport(1280, 900), chromedp.Evaluate(`(() => {
		const a = [...document.querySelectorAll("#figure-schematic a")].find((a) => a.textContent.trim() === "U3");
		a.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true, view: window }));
		const to = document.querySelector(":target");
		return { hash: location.hash, top: to ? to.getBoundingClientRect().top : -1e9, high: innerHeight, text: to ? to.textContent : "" };
	})()`, &went))
	if went.Hash != "#calc-U3" || went.Top < -1 || went.Top > went.High || went.Text != "U3" {
		p.t.Errorf("the name of U3 leads to %+v", went)
	}
}

// printMarks notes the begin and the end of what must stay on one page by words
// that the text of the print holds, without moving anything.
const printMarks = `(() => {
	let n = 0;
	const note = (e, word, edge) => {
		const s = document.createElement("span");
		s.textContent = word;
		s.style.cssText = "position:absolute;left:0;" + edge + ":0;font:2px monospace;color:#888;white-space:nowrap";
		e.append(s);
	};
	const both = (e, kind) => {
		if (getComputedStyle(e).position === "static") e.style.position = "relative";
		note(e, "qb" + n + "z", "top");
		note(e, "qe" + n + "z", "bottom");
		return kind + " " + (e.id || e.textContent.trim().replace(/\s+/g, " ").slice(0, 60));
	};
	const out = [];
	if (!document.querySelector(".calc, .item, figure, .said")) return out;
	for (const e of document.querySelectorAll(".calc, .item, figure, .said")) {
		out.push(both(e, e.className || e.tagName));
		n++;
	}
	for (const e of document.querySelectorAll("h2, h3, .parts")) {
		let next = e.nextElementSibling;
		if (next?.tagName === "TABLE") next = next.querySelector("td, th");
		if (next?.tagName === "DL") next = next.firstElementChild;
		if (!next) {
			out.push("the heading over nothing: " + e.textContent);
			n++;
			continue;
		}
		if (getComputedStyle(e).position === "static") e.style.position = "relative";
		if (getComputedStyle(next).position === "static") next.style.position = "relative";
		note(e, "qb" + n + "z", "top");
		note(next, "qe" + n + "z", "top");
		out.push("heading " + e.textContent.trim().replace(/\s+/g, " ").slice(0, 60));
		n++;
	}
	return out;
})()`

var printMark = regexp.MustCompile(`q([be])(\d+)z`)

// print prints the page on paper of the size in inches, and looks whether what
// belongs together stays on one page.
func (p *shownPage) print(paper string, wide, high float64) {
	p.t.Helper()
	pdf := func(what string) []byte {
		var b []byte
		p.run(what, chromedp.ActionFunc(func(ctx context.Context) error {
			var err error
			b, _, err = page.PrintToPDF().WithPaperWidth(wide).WithPaperHeight(high).WithPrintBackground(true).Do(ctx)
			return err
		}))
		return b
	}
	if p.keep != "" {
		p.save(paper+".pdf", pdf("printing"))
	}
	var what []string
	p.run("marking", chromedp.Evaluate(printMarks, &what))
	name := filepath.Join(p.t.TempDir(), "print.pdf")
	if err := os.WriteFile(name, pdf("printing with marks"), 0o644); err != nil {
		p.t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", "-raw", name, "-").Output()
	if err != nil {
		p.t.Fatalf("reading the print: %v", err)
	}
	p.run("unmarking", chromedp.Reload(), chromedp.WaitReady("body"))
	sheets := bytes.Split(bytes.TrimSuffix(text, []byte("\f")), []byte("\f"))
	begin, end := map[string]int{}, map[string]int{}
	for i, s := range sheets {
		if foot := fmt.Sprintf("page %d of %d", i+1, len(sheets)); p.sheet && !bytes.Contains(s, []byte(foot)) {
			p.t.Errorf("%s: page %d does not say %q", paper, i+1, foot)
		}
		for _, m := range printMark.FindAllSubmatch(s, -1) {
			if string(m[1]) == "b" {
				begin[string(m[2])] = i + 1
			} else {
				end[string(m[2])] = i + 1
			}
		}
	}
	for i, w := range what {
		n := fmt.Sprint(i)
		switch {
		case begin[n] == 0 || end[n] == 0:
			p.t.Errorf("%s: %s is not in the print", paper, w)
		case begin[n] != end[n]:
			p.t.Errorf("%s: %s begins on page %d and ends on page %d", paper, w, begin[n], end[n])
		}
	}
	p.t.Logf("%s: %d pages, %d blocks", paper, len(sheets), len(what))
}

func (p *shownPage) save(name string, b []byte) {
	p.t.Helper()
	if err := os.WriteFile(filepath.Join(p.keep, p.name+"-"+name), b, 0o644); err != nil {
		p.t.Fatal(err)
	}
}
