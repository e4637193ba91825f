package draw

// Scene is one page.
type Scene struct {
	// ID names the scene among others on one page: a short word. It stands in
	// front of the ids of layers and groups.
	ID    string
	Title string // what it is, in a few words
	Desc  string // what it shows, in sentences, for those who cannot see it
	// Window is the page: everything outside it is lost. Its size is the size
	// of the paper, or of the picture on it.
	Window Box
	// Scale is n for a drawing at 1:n, 0 for one that is to no scale.
	Scale  int64
	Layers []Layer // the first lies at the bottom
}

// Layer is a named part of a scene. A writer for a format that has layers keeps
// them; one that has none draws them in order.
type Layer struct {
	Name  string // for programs: "seams"
	Title string // for people: "Seams"
	Items []Item
}

// Layer returns the layer of that name; nil when there is none.
func (s *Scene) Layer(name string) *Layer {
	for i := range s.Layers {
		if s.Layers[i].Name == name {
			return &s.Layers[i]
		}
	}
	return nil
}

// Box returns the smallest box that holds everything drawn.
func (s *Scene) Box() Box {
	b := NoBox
	for _, l := range s.Layers {
		for _, it := range l.Items {
			b = b.Union(it.Box())
		}
	}
	return b
}

// Walk calls visit for every item of the scene that a writer draws: groups are
// opened and compound items taken apart. layer is the name of the layer.
func (s *Scene) Walk(visit func(layer string, it Item)) {
	for _, l := range s.Layers {
		walk(l.Name, l.Items, visit)
	}
}

func walk(layer string, items []Item, visit func(string, Item)) {
	for _, it := range items {
		switch it := it.(type) {
		case Group:
			walk(layer, it.Items, visit)
		case Compound:
			walk(layer, it.Parts(), visit)
		default:
			visit(layer, it)
		}
	}
}
