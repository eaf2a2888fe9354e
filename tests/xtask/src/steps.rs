//! What is being done and how long it took, told while it happens.

use std::time::{Duration, Instant};

use crate::failure::Failure;

/// The steps of a task so far.
pub(crate) struct Steps {
    begun: Instant,
    done: Vec<Step>,
}

/// A step that has ended.
struct Step {
    name: String,
    took: Duration,
    passed: bool,
}

impl Steps {
    pub(crate) fn new() -> Self {
        Self {
            begun: Instant::now(),
            done: Vec::new(),
        }
    }

    /// Does one step; announces it with the time since the start of the task.
    pub(crate) fn step(
        &mut self,
        name: &str,
        work: impl FnOnce() -> Result<(), Failure>,
    ) -> Result<(), Failure> {
        self.announce(name);
        let start = Instant::now();
        let result = work();
        self.done.push(Step {
            name: name.to_string(),
            took: start.elapsed(),
            passed: result.is_ok(),
        });
        result
    }

    /// Says something, with the time since the start of the task.
    pub(crate) fn announce(&self, text: &str) {
        println!("\n[{}] {text}", clock(self.begun.elapsed()));
    }

    /// One line per step, those that were not reached included, and the total.
    pub(crate) fn summary(&self, not_reached: &[&str]) -> String {
        let mut lines = String::from("\n");
        for step in &self.done {
            let verdict = if step.passed { "passed" } else { "FAILED" };
            lines += &format!("{verdict}  {:>7}  {}\n", clock(step.took), step.name);
        }
        for name in not_reached {
            lines += &format!("not run        -  {name}\n");
        }
        lines + &format!("total   {:>7}", clock(self.begun.elapsed()))
    }
}

/// Minutes, seconds and, below a minute, tenths.
fn clock(time: Duration) -> String {
    let seconds = time.as_secs();
    if seconds < 60 {
        format!("{seconds}.{} s", time.subsec_millis() / 100)
    } else {
        format!("{}:{:02}", seconds / 60, seconds % 60)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_short() {
        assert_eq!(clock(Duration::from_millis(40)), "0.0 s");
        assert_eq!(clock(Duration::from_millis(59_960)), "59.9 s");
        assert_eq!(clock(Duration::from_secs(60)), "1:00");
        assert_eq!(clock(Duration::from_secs(3_725)), "62:05");
    }

    #[test]
    fn the_summary_tells_all_three_ends() {
        let mut steps = Steps::new();
        steps.step("saw", || Ok(())).unwrap();
        steps
            .step("glue", || Err(Failure::new("no glue")))
            .unwrap_err();
        let summary = steps.summary(&["paint"]);
        assert!(summary.contains("passed    0.0 s  saw"), "{summary}");
        assert!(summary.contains("FAILED    0.0 s  glue"), "{summary}");
        assert!(summary.contains("not run        -  paint"), "{summary}");
    }
}
