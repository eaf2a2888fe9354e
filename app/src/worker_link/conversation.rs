//! Who has said what, on the page's side: which request goes out when, and which reply counts.
//!
//! Nothing here knows a browser. Every event gives the steps that the link must take, in order.

use crate::protocol::{JobId, Reply, Request};

/// What the link must do.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Step {
    /// Start a worker.
    Start,
    /// End the worker, whatever it is at.
    End,
    /// Send this to the worker.
    Post(Box<Request>),
    /// Tell the page.
    Tell(Reply),
}

/// How the worker stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Standing {
    /// There is none.
    Gone,
    /// Started; what is sent to it now would be lost.
    Starting,
    /// Listens.
    Idle,
    /// Solves, and hears nothing until it is done.
    Busy(JobId),
}

/// The conversation with one worker at a time.
#[derive(Debug)]
pub(super) struct Conversation {
    /// The build of the page; a worker of another build may mean other things by its words.
    build: String,
    standing: Standing,
    /// The newest request while the worker cannot take it; those before it are of no use any more.
    waiting: Option<Request>,
    /// The job whose replies count.
    wanted: Option<JobId>,
}

impl Conversation {
    /// Before the first worker.
    pub(super) const fn new(build: String) -> Self {
        Self {
            build,
            standing: Standing::Gone,
            waiting: None,
            wanted: None,
        }
    }

    /// Starts a worker ahead of the first request.
    pub(super) fn begin(&mut self) -> Vec<Step> {
        self.start()
    }

    /// The page asks; from now on only the replies to this count.
    pub(super) fn ask(&mut self, request: Request) -> Vec<Step> {
        self.wanted = Some(request.job());
        self.waiting = Some(request);
        match self.standing {
            Standing::Gone => self.start(),
            Standing::Idle => self.post(),
            Standing::Starting | Standing::Busy(_) => Vec::new(),
        }
    }

    /// The page wants no reply any more. Only a busy worker must end for that.
    pub(super) fn stop(&mut self) -> Vec<Step> {
        self.wanted = None;
        self.waiting = None;
        match self.standing {
            Standing::Busy(_) => self.restart(),
            Standing::Gone => self.start(),
            Standing::Starting | Standing::Idle => Vec::new(),
        }
    }

    /// The worker says something.
    pub(super) fn hear(&mut self, reply: Reply) -> Vec<Step> {
        match (self.standing, reply) {
            (Standing::Starting, Reply::Ready { build }) if build == self.build => {
                self.standing = Standing::Idle;
                self.post()
            }
            (Standing::Starting, Reply::Ready { .. }) => self.give_up(
                "The worker is of another version than the page. Reload the page to have both of one",
            ),
            (Standing::Busy(job), reply) => self.hear_of(job, reply),
            // Nobody asked.
            _ => Vec::new(),
        }
    }

    /// The worker broke down, or cannot be understood.
    pub(super) fn break_down(&mut self, reason: &str) -> Vec<Step> {
        match self.standing {
            Standing::Gone => Vec::new(),
            // It broke down over a job that does not count any more.
            Standing::Busy(_) if self.waiting.is_some() => self.restart(),
            Standing::Starting | Standing::Idle | Standing::Busy(_) => self.give_up(reason),
        }
    }

    fn hear_of(&mut self, job: JobId, reply: Reply) -> Vec<Step> {
        let is_last = reply.is_last();
        // A worker that cannot read its request does not know the job.
        let counts = self.wanted == Some(reply.job().unwrap_or(job));
        let mut steps = Vec::new();
        if is_last {
            self.standing = Standing::Idle;
            steps = self.post();
        }
        if counts {
            if is_last {
                self.wanted = None;
            }
            steps.push(Step::Tell(reply));
        }
        steps
    }

    fn start(&mut self) -> Vec<Step> {
        self.standing = Standing::Starting;
        vec![Step::Start]
    }

    fn restart(&mut self) -> Vec<Step> {
        self.standing = Standing::Starting;
        vec![Step::End, Step::Start]
    }

    fn post(&mut self) -> Vec<Step> {
        let Some(request) = self.waiting.take() else {
            return Vec::new();
        };
        self.standing = Standing::Busy(request.job());
        vec![Step::Post(Box::new(request))]
    }

    fn give_up(&mut self, reason: &str) -> Vec<Step> {
        self.standing = Standing::Gone;
        self.waiting = None;
        let job = self.wanted.take();
        let reason = reason.to_owned();
        vec![Step::End, Step::Tell(Reply::Fault { job, reason })]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use crate::project_file;
    use crate::protocol::{AimWord, Progress, Ranking, UnitWord};

    fn request(job: u32) -> Request {
        Request::Rank {
            job: JobId(job),
            project: project_file::write(&demo::blank()),
            aim: AimWord::Pencils,
            unit: UnitWord::Millimetre,
        }
    }

    fn ready(build: &str) -> Reply {
        let build = build.to_owned();
        Reply::Ready { build }
    }

    fn halfway(job: u32) -> Reply {
        let (job, progress) = (JobId(job), Progress::Laid { done: 1, of: 2 });
        Reply::Progress { job, progress }
    }

    fn ranked(job: u32) -> Reply {
        let (rows, left_out) = (Vec::new(), Vec::new());
        let ranking = Ranking { rows, left_out };
        let job = JobId(job);
        Reply::Ranked { job, ranking }
    }

    /// The steps as short words, one after the other.
    fn told(steps: &[Step]) -> String {
        let words = steps.iter().map(|step| match step {
            Step::Start => "start".to_owned(),
            Step::End => "end".to_owned(),
            Step::Post(request) => format!("post {}", request.job().0),
            Step::Tell(Reply::Progress { job, .. }) => format!("progress {}", job.0),
            Step::Tell(Reply::Ranked { job, .. }) => format!("ranked {}", job.0),
            Step::Tell(Reply::Fault { job: Some(job), .. }) => format!("fault {}", job.0),
            Step::Tell(Reply::Fault { job: None, .. }) => "fault".to_owned(),
            Step::Tell(other) => format!("{other:?}"),
        });
        words.collect::<Vec<_>>().join(", ")
    }

    #[track_caller]
    fn check(steps: Vec<Step>, expected: &str) {
        assert_eq!(told(&steps), expected);
    }

    /// A conversation with a worker that listens.
    fn listening() -> Conversation {
        let mut talk = Conversation::new("0f".to_owned());
        check(talk.begin(), "start");
        check(talk.hear(ready("0f")), "");
        talk
    }

    #[test]
    fn a_request_waits_until_the_worker_listens() {
        let mut talk = Conversation::new(String::new());
        check(talk.begin(), "start");
        check(talk.ask(request(1)), "");
        check(talk.hear(ready("")), "post 1");
        check(talk.hear(halfway(1)), "progress 1");
        check(talk.hear(ranked(1)), "ranked 1");
        check(talk.ask(request(2)), "post 2");
    }

    #[test]
    fn of_requests_to_a_busy_worker_only_the_newest_is_sent() {
        let mut talk = listening();
        check(talk.ask(request(1)), "post 1");
        check(talk.ask(request(2)), "");
        check(talk.ask(request(3)), "");
        check(talk.hear(halfway(1)), "");
        check(talk.hear(ranked(1)), "post 3");
        check(talk.hear(ranked(3)), "ranked 3");
        check(talk.hear(ranked(3)), "");
    }

    #[test]
    fn stopping_ends_a_busy_worker_and_no_other() {
        let mut talk = listening();
        check(talk.stop(), "");
        check(talk.ask(request(1)), "post 1");
        check(talk.stop(), "end, start");
        check(talk.hear(ranked(1)), "");
        check(talk.stop(), "");
        check(talk.ask(request(2)), "");
        check(talk.hear(ready("0f")), "post 2");
    }

    #[test]
    fn a_worker_that_breaks_down_is_told_and_replaced_at_the_next_request() {
        let mut talk = listening();
        check(talk.ask(request(1)), "post 1");
        check(talk.break_down("trap"), "end, fault 1");
        check(talk.break_down("again"), "");
        check(talk.ask(request(2)), "start");
        check(talk.hear(ready("0f")), "post 2");
    }

    #[test]
    fn breaking_down_over_an_old_job_is_not_told() {
        let mut talk = listening();
        check(talk.ask(request(1)), "post 1");
        check(talk.ask(request(2)), "");
        check(talk.break_down("trap"), "end, start");
        check(talk.hear(ready("0f")), "post 2");
        check(talk.break_down("trap"), "end, fault 2");
    }

    #[test]
    fn a_worker_that_does_not_start_is_told_once() {
        let mut talk = Conversation::new(String::new());
        check(talk.begin(), "start");
        check(talk.ask(request(1)), "");
        check(talk.break_down("no script"), "end, fault 1");
        check(talk.ask(request(2)), "start");
        check(talk.break_down("no script"), "end, fault 2");
    }

    #[test]
    fn a_worker_of_another_build_is_refused() {
        let mut talk = Conversation::new("0f".to_owned());
        check(talk.begin(), "start");
        check(talk.ask(request(1)), "");
        check(talk.hear(ready("1e")), "end, fault 1");
    }

    #[test]
    fn a_worker_that_cannot_read_its_request_goes_on() {
        let mut talk = listening();
        check(talk.ask(request(1)), "post 1");
        let (job, reason) = (None, String::new());
        check(talk.hear(Reply::Fault { job, reason }), "fault");
        check(talk.ask(request(2)), "post 2");
    }

    #[test]
    fn what_nobody_asked_for_is_not_told() {
        let mut talk = listening();
        check(talk.hear(ranked(9)), "");
        check(talk.hear(ready("0f")), "");
        check(talk.ask(request(1)), "post 1");
        check(talk.hear(halfway(9)), "");
    }
}
