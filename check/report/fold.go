package report

import (
	"regexp"
	"sync"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

// question is an open question together with the other members of its group that
// it is open for.
type question struct {
	*check.Unknown
	also  []string // the others as the line names them
	parts []string // and their parts
}

// numbered is a name that counts members of a group: U3, FB12.
var numbered = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\b(\p{Lu}[\p{L}-]*)\d+\b`) })

// folded joins questions of one rule on one statement that differ only in the
// member of the group they speak of: eight units written as one statement make
// one line. The order is that of the first of each.
func folded(list []check.Unknown) []question {
	type key struct {
		rule  string
		file  *lang.File
		span  lang.Span
		needs string
	}
	out := make([]question, 0, len(list))
	at := map[key]int{}
	for i := range list {
		u := &list[i]
		k := key{u.Rule, u.File, u.Span, numbered().ReplaceAllString(u.Needs, "$1#")}
		j, seen := at[k]
		if !seen || u.Part == "" || out[j].names(u.Part) {
			at[k] = len(out)
			out = append(out, question{Unknown: u})
			continue
		}
		out[j].also = append(out[j].also, out[j].other(u))
		out[j].parts = append(out[j].parts, u.Part)
	}
	return out
}

// other is the name by which a question differs from that of q; the part where the
// texts are equal.
func (q *question) other(u *check.Unknown) string {
	mine, its := numbered().FindAllString(q.Needs, -1), numbered().FindAllString(u.Needs, -1)
	for i, name := range its {
		if name != mine[i] { // as many: the texts are equal but for the numbers
			return name
		}
	}
	return u.Part
}

func (q *question) names(part string) bool {
	if q.Part == "" || q.Part == part {
		return true
	}
	for _, p := range q.parts {
		if p == part {
			return true
		}
	}
	return false
}
