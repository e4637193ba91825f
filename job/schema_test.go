package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
)

// compiled compiles the published schema, which the library checks against
// draft 2020-12 of JSON Schema.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("job.json", document); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("job.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plain returns a document as a program that knows nothing of jobs reads it.
func plain(t *testing.T, name string, data []byte) any {
	t.Helper()
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return value
}

func TestSchemaRefuses(t *testing.T) {
	s := compiled(t)
	sound := `{"firstdrop": 1, "room": {"closed": false, "walls": [{"name": "A", "width": "3 m", "height": 2}]}, "papers": [{"name": "B", "width": 5, "roll": 9, "match": "free"}]}`
	if err := s.Validate(plain(t, "sound", []byte(sound))); err != nil {
		t.Errorf("sound: %v", err)
	}
	for _, change := range [][2]string{
		{`"firstdrop": 1`, `"firstdrop": 2`},
		{`"closed"`, `"close"`},
		{`"closed": false`, `"closed": "false"`},
		{`"name": "A", `, ``},
		{`"height": 2`, `"height": [2]`},
		{`"height": 2`, `"height": {"left": 2}`},
		{`"height": 2`, `"outline": [[0, 0], [1, 1]]`},
		{`"height": 2`, `"outline": [[0, 0], [1, 1], [1, 2, 3]]`},
		{`"height": 2`, `"corner": "round"`},
		{`"height": 2`, `"corner": {"kind": "round"}`},
		{`"match": "free"`, `"match": "free", "pack": 4`},
		{`"height": 2`, `"sight": "pretty"`},
		{`"match": "free"`, `"match": "free", "paste": "glue"`},
		{`"match": "free"`, `"match": "free", "available": -1`},
		{`"match": "free"`, `"match": "free", "also": [{"pack": 1}]`},
		{`"match": "free"`, `"match": "free", "rolls": [{"length": 9}]`},
		{`"match": "free"`, `"match": "free", "rolls": [{"name": "1", "parts": [{"length": 9}]}]`},
		{`"match": "free"`, `"match": "free", "rolls": [{"name": "1", "flaws": [{"from": 9}]}]`},
		{`"match": "free"`, `"match": "free", "in_order": "yes"`},
		{`"firstdrop": 1`, `"firstdrop": 1, "cutting": {"goals": ["rolls", "rolls"]}`},
		{`"firstdrop": 1`, `"firstdrop": 1, "cutting": {"goals": ["money"]}`},
	} {
		data := strings.Replace(sound, change[0], change[1], 1)
		if data == sound {
			t.Fatalf("%s does not stand in the sound document", change[0])
		}
		if s.Validate(plain(t, "faulty", []byte(data))) == nil {
			t.Errorf("the schema takes %s", change[1])
		}
	}
}

// schemaNode is as much of a JSON Schema as ours uses.
type schemaNode struct {
	Ref         string                 `json:"$ref"`
	Description string                 `json:"description"`
	Properties  map[string]*schemaNode `json:"properties"`
	Required    []string               `json:"required"`
	Additional  *bool                  `json:"additionalProperties"`
	Items       json.RawMessage        `json:"items"`
	OneOf       []*schemaNode          `json:"oneOf"`
	Defs        map[string]*schemaNode `json:"$defs"`
}

// comparer holds the structs against the schema.
type comparer struct {
	t    *testing.T
	root schemaNode
	seen map[string]bool
}

// resolve follows a reference.
func (c *comparer) resolve(n *schemaNode) *schemaNode {
	for n.Ref != "" {
		name := strings.TrimPrefix(n.Ref, "#/$defs/")
		c.seen[name] = true
		if c.root.Defs[name] == nil {
			c.t.Fatalf("%s is not in the schema", n.Ref)
		}
		n = c.root.Defs[name]
	}
	return n
}

// object finds the mapping among the forms that a value may have.
func (c *comparer) object(n *schemaNode) *schemaNode {
	n = c.resolve(n)
	for _, form := range n.OneOf {
		if form = c.resolve(form); form.Properties != nil {
			return form
		}
	}
	return n
}

// written are the structs that stand for the mappings of types with a notation
// of their own.
var written = map[reflect.Type]reflect.Type{
	reflect.TypeFor[Span]():      reflect.TypeFor[spanKeys](),
	reflect.TypeFor[Allowance](): reflect.TypeFor[allowanceKeys](),
	reflect.TypeFor[Corner]():    reflect.TypeFor[cornerKeys](),
}

// compare checks the keys of a type against a schema, both ways.
func (c *comparer) compare(typ reflect.Type, n *schemaNode, path string) {
	for typ.Kind() == reflect.Pointer {
		typ = typ.Elem()
	}
	if w, ok := written[typ]; ok {
		typ = w
	}
	if _, isScalar := scalars[typ]; isScalar || typ == reflect.TypeFor[geom.Point]() || typ == reflect.TypeFor[room.Sides]() {
		return
	}
	switch typ.Kind() {
	case reflect.Slice:
		var items schemaNode
		if err := json.Unmarshal(c.resolve(n).Items, &items); err != nil {
			c.t.Fatalf("%s: %v", path, err)
		}
		c.compare(typ.Elem(), &items, path+"[]")
	case reflect.Struct:
		c.compareKeys(typ, c.object(n), path)
	}
}

func (c *comparer) compareKeys(typ reflect.Type, n *schemaNode, path string) {
	if n.Additional == nil || *n.Additional {
		c.t.Errorf("%s: the schema takes any key", path)
	}
	fields := fieldsOf(typ)
	for name, property := range n.Properties {
		if find(fields, name) == nil {
			c.t.Errorf("%s.%s is in the schema only", path, name)
		}
		if property.Description == "" && c.resolve(property).Description == "" {
			c.t.Errorf("%s.%s has no description", path, name)
		}
	}
	for _, f := range fields {
		property := n.Properties[f.name]
		if property == nil {
			c.t.Errorf("%s.%s is not in the schema", path, f.name)
			continue
		}
		if f.isRequired != slices.Contains(n.Required, f.name) {
			c.t.Errorf("%s.%s is required by one of reader and schema only", path, f.name)
		}
		c.compare(typ.Field(f.index).Type, property, path+"."+f.name)
	}
}

func TestSchemaHasEveryKeyAndNoOther(t *testing.T) {
	c := &comparer{t: t, seen: map[string]bool{}}
	if err := json.Unmarshal(Schema(), &c.root); err != nil {
		t.Fatal(err)
	}
	c.compare(reflect.TypeFor[Job](), &c.root, "job")
	for name := range c.root.Defs {
		if !c.seen[name] && !bytes.Contains(schema, []byte("#/$defs/"+name+`"`)) {
			t.Errorf("$defs/%s is used nowhere", name)
		}
	}
}

// The words that the schema lists are those that the reader takes.
func TestSchemaWords(t *testing.T) {
	text := string(Schema())
	for _, f := range append(fieldsOf(reflect.TypeFor[Start]()), fieldsOf(reflect.TypeFor[Kill]())...) {
		for _, w := range f.words {
			if !strings.Contains(text, `"`+w+`"`) {
				t.Errorf("%s may be %s, which the schema does not have", f.name, w)
			}
		}
	}
	for kind := room.Door; kind <= room.Panel; kind++ {
		if !strings.Contains(text, `"`+kind.String()+`"`) {
			t.Errorf("the schema has no %v", kind)
		}
	}
	for kind := room.Socket; kind <= room.Vent; kind++ {
		if !strings.Contains(text, `"`+kind.String()+`"`) {
			t.Errorf("the schema has no %v", kind)
		}
	}
	for g := cutting.FewestRolls; g <= cutting.FewestChanges; g++ {
		if !strings.Contains(text, `"`+g.String()+`"`) {
			t.Errorf("the schema has no %v", g)
		}
	}
}

// The defaults that the schema tells people are those that a task gets.
func TestSchemaDefaults(t *testing.T) {
	var root schemaNode
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	r, taste := hanging.DefaultRules(), plan.DefaultTaste()
	w, cut := taste.Weights, plan.DefaultCut()
	if r.Head != r.Foot {
		t.Errorf("head %v and foot %v differ, but the schema tells one default", r.Head, r.Foot)
	}
	for section, defaults := range map[string]map[string]string{
		"rules": {
			"allowance": r.Head.String() + " each", "wrap": r.Wrap.String(), "wrap_limit": r.WrapLimit.String(),
			"outside_wrap": r.OutsideWrap.String(), "plumb_tolerance": r.PlumbTolerance.String(), "start_overlap": r.Overlap.String(),
			"cut_step": r.CutStep.String(), "min_sliver": taste.MinSliver.String(), "seam_clearance": taste.SeamClearance.String(),
			"overrun": taste.Overrun.String(), "long_piece": taste.LongPiece.String(), "eye_level": taste.EyeLevel.String(),
		},
		"weights": {
			"roll": fmt.Sprint(w.Roll), "sliver": fmt.Sprint(w.Sliver), "seam_near": fmt.Sprint(w.SeamNear), "focal_seam": fmt.Sprint(w.FocalSeam),
			"kill_metre": fmt.Sprint(w.KillMetre), "motif_cut": fmt.Sprint(w.MotifCut), "end_in_fold": fmt.Sprint(w.EndInFold),
			"drop": fmt.Sprint(w.Drop), "piece": fmt.Sprint(w.Piece), "wedge": fmt.Sprint(w.Wedge), "batch_change": fmt.Sprint(w.BatchChange),
			"drift": fmt.Sprint(w.Drift), "off_plumb": fmt.Sprint(w.OffPlumb), "off_casing": fmt.Sprint(w.OffCasing), "corner_step": fmt.Sprint(w.CornerStep), "mixed_ways": fmt.Sprint(w.MixedWays),
			"sliver_beside": fmt.Sprint(w.SliverBeside), "overrun": fmt.Sprint(w.Overrun), "renew_metre": fmt.Sprint(w.RenewMetre), "off_centre": fmt.Sprint(w.OffCentre), "unequal_ends": fmt.Sprint(w.UnequalEnds), "motif_cut_low": fmt.Sprint(w.MotifCutLow), "lap_shadow": fmt.Sprint(w.LapShadow), "lining_seam": fmt.Sprint(w.LiningSeam), "seam_fitting": fmt.Sprint(w.SeamFitting), "awkward": fmt.Sprint(w.Awkward),
		},
		"cutting": {
			"lead": cut.Lead.String(), "loss": cut.Loss.String(), "blade": cut.Blade.String(), "slit_over": cut.SlitOver.String(), "alone": fmt.Sprint(cut.Alone),
			"goals": fmt.Sprintf("%v, %v, %v", cut.First, cut.Then[0], cut.Then[1]),
		},
	} {
		properties := root.Defs[section].Properties
		if len(defaults) != len(properties) {
			t.Errorf("%s: %d defaults for %d keys", section, len(defaults), len(properties))
		}
		for key, want := range defaults {
			if text := properties[key].Description; !strings.Contains(text, "Default: "+want) {
				t.Errorf("%s.%s: %q does not tell the default %s", section, key, text, want)
			}
		}
	}
}

// What differs where lengths are given in inches is told beside it.
func TestSchemaDefaultsInInches(t *testing.T) {
	var root schemaNode
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	r, taste, cut := hanging.RulesIn(measure.Imperial), plan.TasteIn(measure.Imperial), plan.CutIn(measure.Imperial)
	for section, defaults := range map[string]map[string]measure.Length{
		"rules": {
			"allowance": r.Head, "wrap": r.Wrap, "wrap_limit": r.WrapLimit, "outside_wrap": r.OutsideWrap,
			"plumb_tolerance": r.PlumbTolerance, "start_overlap": r.Overlap, "cut_step": r.CutStep,
			"min_sliver": taste.MinSliver, "seam_clearance": taste.SeamClearance, "long_piece": taste.LongPiece, "eye_level": taste.EyeLevel,
		},
		"cutting": {"blade": cut.Blade, "slit_over": cut.SlitOver},
	} {
		for key, want := range defaults {
			_, text, _ := strings.Cut(root.Defs[section].Properties[key].Description, ", imperial ")
			text, _, _ = strings.Cut(strings.TrimSuffix(text, "."), " (")
			if got, err := measure.ParseLength(text, 0); err != nil || got != want {
				t.Errorf("%s.%s: %q tells %v in inches (%v), the default is %v", section, key, text, got, err, want)
			}
		}
	}
}

func TestSchemaIsACopy(t *testing.T) {
	Schema()[0] = 'x'
	if Schema()[0] != '{' {
		t.Error("a change of the returned schema changed the schema")
	}
}
