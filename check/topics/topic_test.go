package topics

import "testing"

// Every topic has a name of its own and is found by it.
func TestNames(t *testing.T) {
	all := All()
	if len(all) != len(registered) || len(all) == 0 {
		t.Fatalf("%d topics of %d", len(all), len(registered))
	}
	for i, topic := range all {
		if i > 0 && all[i-1].Name >= topic.Name {
			t.Errorf("%s stands behind %s", topic.Name, all[i-1].Name)
		}
		if found, ok := Find(topic.Name); !ok || found != topic {
			t.Errorf("%s is not found", topic.Name)
		}
	}
	if _, ok := Find("no-such-topic"); ok {
		t.Error("a topic that is not there is found")
	}
}
