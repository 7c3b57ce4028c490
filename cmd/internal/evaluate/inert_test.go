package evaluate_test

import (
	"regexp"
	"strings"
	"testing"
)

// This file judges pages: what a browser would make of them may show, but not act or fetch.

var (
	ownScript = regexp.MustCompile(`(?s)<script( type="application/json" id="[a-z]+")?>(.*?)</script>`)
	tag       = regexp.MustCompile(`<[!?/a-zA-Z][^>]*>`)
	attribute = regexp.MustCompile(`([^\s"'>/=]+)(?:\s*=\s*("[^"]*"|'[^']*'|[^\s"'=<>` + "`" + `]+))?`)
	reference = regexp.MustCompile(`^"(#[^"]*|https?://[^"]*|mailto:[^"]*)"$`)
	picture   = regexp.MustCompile(`^"data:image/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=]*"$`)
	allowed   = " a abbr article b blockquote body br button caption circle code dd defs desc details div dl dt em fieldset figcaption figure form g h1 h2 h3 h4 h5 h6 head header hr html i img input label legend li line linearGradient link main mark marker math meta mfrac mi mn mo mover mpadded mrow ms mspace msqrt mroot mstyle msub msubsup msup mtable mtd mtext mtr munder nav ol output p path pattern polygon polyline pre rect script section small span stop strong style sub summary sup svg table tbody td text tfoot th thead title tr tspan ul use var clipPath ellipse symbol !DOCTYPE "
)

// inert reports tags, attributes and addresses that do not belong on a page.
func inert(t *testing.T, page string) {
	t.Helper()
	scripts := 0
	page = ownScript.ReplaceAllStringFunc(page, func(s string) string {
		m := ownScript.FindStringSubmatch(s)
		if m[1] == "" {
			scripts++
		}
		if strings.Contains(m[2], "<script") || strings.Contains(m[2], "alert(1)") && m[1] == "" {
			t.Errorf("a script of the notebook: %.200s", s)
		}
		return ""
	})
	if scripts > 1 {
		t.Errorf("the page has %d scripts, want its own at most", scripts)
	}
	for _, found := range tag.FindAllString(page, -1) {
		name := strings.TrimPrefix(regexp.MustCompile(`^</?[!a-zA-Z0-9]*`).FindString(found), "<")
		name = strings.TrimPrefix(name, "/")
		if !strings.Contains(allowed, " "+name+" ") {
			t.Errorf("the page has a tag %.200s", found)
			continue
		}
		for _, a := range attribute.FindAllStringSubmatch(strings.TrimPrefix(strings.TrimPrefix(found, "<"), name), -1) {
			acting(t, name, strings.ToLower(a[1]), a[2], found)
		}
	}
}

func acting(t *testing.T, tag, name, value, whole string) {
	t.Helper()
	bad := strings.HasPrefix(name, "on")
	switch name {
	case "href", "xlink:href":
		bad = !reference.MatchString(value)
	case "src":
		bad = tag != "img" || !picture.MatchString(value)
	case "action", "formaction", "srcset", "srcdoc", "background", "poster", "ping", "data":
		bad = true
	case "style":
		bad = strings.Contains(value, "url(")
	case "http-equiv":
		bad = value != `"Content-Security-Policy"`
	}
	if bad {
		t.Errorf("the page has %s=%s in %.200s", name, value, whole)
	}
}
