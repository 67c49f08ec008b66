package link

// The text of a draft is packed by predicting each bit from what stands before
// it and storing only the surprise: several contexts guess, their guesses are
// mixed, and the coder is told the odds. The model first reads the dictionary,
// so that what every draft holds costs next to nothing. A general packer needed
// twice as much for such short texts, and 50 KB of the page's download.
//
// All arithmetic is in integers: the same bytes natively and in wasm.

const (
	contexts  = 6
	slotBits  = 16
	adaptMost = 30 // observations after which a slot adapts no more slowly
)

// model predicts the next bit. A slot holds a probability in its upper 22 bits
// and how often it was seen in its lower 10.
type model struct {
	slots   [contexts][1 << slotBits]uint32
	weights [contexts + 1][contexts]int32 // by how many contexts have been seen before

	past  uint64 // the last eight bytes
	word  uint32 // hash of the letters since the last other sign
	bases [contexts]uint32
	part  uint32 // bits of the present byte, with a leading 1

	at      [contexts]*uint32
	opinion [contexts]int32
	set     int
	chance  int32
}

func newModel() *model {
	m := &model{part: 1}
	for i := range m.slots {
		for j := range m.slots[i] {
			m.slots[i][j] = 1 << 31
		}
	}
	for i := range m.weights {
		for j := range m.weights[i] {
			m.weights[i][j] = 1 << 14
		}
	}
	m.turn()
	return m
}

// turn takes up the contexts of a new byte: the last one to five bytes, and the
// word begun with the byte before it.
func (m *model) turn() {
	for i := range contexts - 1 {
		m.bases[i] = mixed(uint32(m.past&(1<<(8*(i+1))-1)), uint32(m.past&(1<<(8*(i+1))-1)>>32)+uint32(i)<<28)
	}
	m.bases[contexts-1] = mixed(m.word, uint32(m.past&0xff)+0x77000000)
}

func mixed(a, b uint32) uint32 {
	h := a*0x9e3779b1 ^ b*0x85ebca6b
	return (h ^ h>>15) * 0xc2b2ae35
}

// predict gives the chance, in 1/65536, that the next bit is 1.
func (m *model) predict() uint32 {
	m.set = 0
	for i := range contexts {
		s := &m.slots[i][mixed(m.bases[i], m.part)>>(32-slotBits)]
		m.at[i] = s
		m.opinion[i] = stretch(*s >> 20)
		if *s&1023 > 0 {
			m.set++
		}
	}
	sum := int64(0)
	for i, w := range m.weights[m.set] {
		sum += int64(w) * int64(m.opinion[i])
	}
	m.chance = squash(int32(sum >> 16))
	return uint32(m.chance)
}

// learn tells the model what the bit was.
func (m *model) learn(bit uint32) {
	wrong := int64(bit<<16) - int64(m.chance)
	for i := range contexts {
		m.weights[m.set][i] += int32((int64(m.opinion[i])*wrong + 1<<13) >> 14)
		s := *m.at[i]
		p, n := s>>10, s&1023
		if bit == 1 {
			p += (1<<22 - 1 - p) * 2 / (2*n + 3)
		} else {
			p -= p * 2 / (2*n + 3)
		}
		*m.at[i] = p<<10 | min(n+1, adaptMost)
	}
	m.part = m.part<<1 | bit
	if m.part < 256 {
		return
	}
	c := byte(m.part)
	m.part = 1
	m.past = m.past<<8 | uint64(c)
	if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80 {
		m.word = (m.word + uint32(c|0x20)) * 0x2c9277b5
	} else {
		m.word = 0
	}
	m.turn()
}

// knees of 65536/(1+exp(-x)) for x from -8 to 8 in halves.
var knees = [33]int32{22, 36, 60, 98, 162, 267, 439, 721, 1179, 1921, 3108, 4971, 7812, 11966, 17625, 24743, 32768, 40793, 47911, 53570, 57724, 60565, 62428, 63615, 64357, 64815, 65097, 65269, 65374, 65438, 65476, 65500, 65514}

// squash turns an opinion, in 1/256 of a logit, into a chance.
func squash(x int32) int32 {
	x = min(max(x, -2047), 2047) + 2048
	i, f := x>>7, x&127
	return knees[i] + (knees[i+1]-knees[i])*f>>7
}

// logits are the opinions by chance in 1/4096: the inverse of squash.
var logits = func() (t [4096]int16) {
	x := int32(-2047)
	for p := range t {
		for x < 2047 && squash(x) < int32(p)<<4+8 {
			x++
		}
		t[p] = int16(x)
	}
	return t
}()

func stretch(p uint32) int32 { return int32(logits[p]) }

// trained is the model that has read the dictionary.
var trained = func() func() *model {
	var ready *model
	return func() *model {
		if ready == nil {
			ready = newModel()
			for _, c := range []byte(dictionary1) {
				for k := 7; k >= 0; k-- {
					ready.predict()
					ready.learn(uint32(c>>k) & 1)
				}
			}
		}
		m := new(model)
		*m = *ready
		return m
	}
}()
