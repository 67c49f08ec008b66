//go:build linux

package engines

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
	"syscall"
	"time"
)

// process is a started program with all that it starts itself, and the lines
// they write.
type process struct {
	cmd   *exec.Cmd
	ended chan struct{}

	mu    sync.Mutex
	lines []string
}

// run starts a program in a process group of its own. It ends with the test's
// process, however that ends.
func run(env []string, extra []*os.File, name string, args ...string) (*process, error) {
	out, in, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	p := &process{cmd: exec.Command(name, args...), ended: make(chan struct{})}
	p.cmd.Env = append(os.Environ(), env...)
	p.cmd.Stdout, p.cmd.Stderr, p.cmd.ExtraFiles = in, in, extra
	p.cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true, Pdeathsig: syscall.SIGKILL}
	err = p.cmd.Start()
	in.Close()
	if err != nil {
		out.Close()
		return nil, fmt.Errorf("starting %s: %w", name, err)
	}
	go p.read(out)
	go func() {
		p.cmd.Wait() //nolint:errcheck // it is killed
		close(p.ended)
	}()
	return p, nil
}

func (p *process) read(out io.ReadCloser) {
	defer out.Close()
	lines := bufio.NewReader(out)
	for {
		line, err := lines.ReadString('\n')
		if line = strings.TrimSpace(line); line != "" {
			p.mu.Lock()
			p.lines = append(p.lines, line)
			p.mu.Unlock()
		}
		if err != nil {
			return
		}
	}
}

// said are the lines written so far.
func (p *process) said() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]string(nil), p.lines...)
}

// await gives the rest of the first line that holds a text, once there is one.
func (p *process) await(text string) (string, error) {
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		for _, line := range p.said() {
			if _, rest, found := strings.Cut(line, text); found {
				return rest, nil
			}
		}
		select {
		case <-p.ended:
			return "", fmt.Errorf("%s ended; it said %q", p.cmd.Path, p.said())
		default:
		}
	}
	return "", fmt.Errorf("%s did not say %q; it said %q", p.cmd.Path, text, p.said())
}

// kill ends the program and all that it started.
func (p *process) kill() {
	syscall.Kill(-p.cmd.Process.Pid, syscall.SIGKILL) //nolint:errcheck // it may have ended
	<-p.ended
}
