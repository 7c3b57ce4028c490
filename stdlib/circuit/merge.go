package circuit

// This file puts one network into another.

// Including returns n with all parts of another network: its nodes, but for ground, and its parts get the
// prefix and a space before their names, and its sources are scaled.
//
// Example: n.Including("piezo", n, 0.5).Resistor("mix", "out", "piezo out", 100*kΩ)
func (n Network) Including(prefix string, other Network, scale float64) Network {
	if other.err != nil {
		return n.refuse(prefix, other.err)
	}
	named := func(name string) string {
		if name == "" || name == Ground {
			return name
		}
		return prefix + " " + name
	}
	for _, p := range other.parts {
		p.name, p.from, p.to = prefix+" "+p.name, named(p.from), named(p.to)
		p.plus, p.minus = named(p.plus), named(p.minus)
		if p.through != "" {
			p.through = prefix + " " + p.through
		}
		p.source *= scale
		n = n.with(p, finite("scale", scale, ""))
	}
	for _, c := range other.couplings {
		n = n.Couple(prefix+" "+c.first, prefix+" "+c.second, c.k)
	}
	return n
}
