package cautions

import (
	"strings"
	"testing"
)

func TestEveryCautionSaysWhereItComesFrom(t *testing.T) {
	seen := map[string]bool{}
	for _, topic := range Topics() {
		if topic.Title.IsZero() || len(topic.Rules) == 0 {
			t.Errorf("topic %q is empty", topic.Title)
		}
		for _, rule := range topic.Rules {
			if rule.Short.IsZero() || rule.Text.IsZero() || rule.Source.IsZero() {
				t.Errorf("%s: %+v is incomplete", topic.Title, rule)
			}
			if seen[rule.Short.String()] {
				t.Errorf("%q stands twice", rule.Short)
			}
			seen[rule.Short.String()] = true
			if text := rule.Text.String() + rule.Source.String(); strings.Contains(text, "%!") {
				t.Errorf("%s is written as %q", rule.Short, text)
			}
		}
	}
}

func TestWhatCanHurtIsNamed(t *testing.T) {
	var all strings.Builder
	for _, topic := range Topics() {
		all.WriteString(topic.Title.String())
		for _, rule := range topic.Rules {
			all.WriteString(" " + rule.Short.String() + " " + rule.Text.String())
		}
	}
	for _, word := range []string{"allergen", "carbon monoxide", "2 hours", "Treat all", "container or sack", "body mass", "doctor"} {
		if !strings.Contains(all.String(), word) {
			t.Errorf("nothing is said of %q", word)
		}
	}
	if !strings.Contains(Preface().String(), "local rules") || !strings.Contains(Preface().String(), "Unknown is never safe") {
		t.Error("the preface must defer to local rules and say that unknown is never safe")
	}
}
