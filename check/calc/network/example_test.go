package network_test

import (
	"fmt"

	"example.org/tundish/check/calc/network"
)

// Two equal units (invented data) between headers, fed at one end: the nearer
// one gets more.
func Example() {
	s, err := network.New(4.127e-7) // water of 70 degC
	if err != nil {
		fmt.Println(err)
		return
	}
	header := network.Pipe{Length: 2, Bore: 0.0531, Roughness: 0.045e-3, Loss: 0.5}
	source, _ := s.AddFixed(10)
	back, _ := s.AddJunction(0)
	front, _ := s.AddJunction(0)
	out, _ := s.AddJunction(2.4e-3)
	unit := []network.Point{{Flow: 1.2e-3, Head: 1.5}}
	near, _ := s.AddLoss(source, out, unit, false)
	_, _ = s.AddPipe(source, back, header)
	far, _ := s.AddLoss(back, front, unit, false)
	_, _ = s.AddPipe(front, out, header)
	if err := s.Solve(); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("near %.4g L/s, far %.4g L/s\n", s.Link(near).Flow*1000, s.Link(far).Flow*1000)
	// Output: near 1.208 L/s, far 1.192 L/s
}
