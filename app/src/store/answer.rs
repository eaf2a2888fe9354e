//! A value on its way from an event handler to the code that waits for it.

use std::{
    cell::RefCell,
    future::{Future, poll_fn},
    rc::Rc,
    task::{Poll, Waker},
};

/// Arrives at most once: the first value given counts. Clones share it.
pub(crate) struct Answer<T>(Rc<RefCell<State<T>>>);

enum State<T> {
    Awaited(Option<Waker>),
    Given(T),
    Taken,
}

impl<T> Answer<T> {
    pub(crate) fn new() -> Self {
        Self(Rc::new(RefCell::new(State::Awaited(None))))
    }

    /// Gives the answer, unless one was given before; tells whether this one counts.
    pub(crate) fn give(&self, value: T) -> bool {
        let mut state = self.0.borrow_mut();
        let State::Awaited(waker) = &mut *state else {
            return false;
        };
        let waker = waker.take();
        *state = State::Given(value);
        drop(state);
        if let Some(waker) = waker {
            waker.wake();
        }
        true
    }

    /// Is done when the answer is there; never, if it was taken before.
    pub(crate) fn taken(&self) -> impl Future<Output = T> {
        poll_fn(|context| {
            let mut state = self.0.borrow_mut();
            match std::mem::replace(&mut *state, State::Taken) {
                State::Given(value) => Poll::Ready(value),
                State::Awaited(_) => {
                    *state = State::Awaited(Some(context.waker().clone()));
                    Poll::Pending
                }
                State::Taken => Poll::Pending,
            }
        })
    }
}

impl<T> Clone for Answer<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

#[cfg(test)]
mod tests {
    use futures::executor::LocalPool;
    use futures::task::LocalSpawnExt;

    use super::*;

    #[test]
    fn the_first_answer_counts() {
        let answer = Answer::new();
        assert!(answer.give(1));
        assert!(!answer.give(2));
        assert_eq!(LocalPool::new().run_until(answer.taken()), 1);
    }

    #[test]
    fn an_answer_wakes_who_waits() {
        let (answer, heard) = (Answer::new(), Answer::new());
        let (asking, hearing) = (answer.clone(), heard.clone());
        let mut pool = LocalPool::new();
        pool.spawner()
            .spawn_local(async move {
                hearing.give(asking.taken().await);
            })
            .unwrap();
        pool.run_until_stalled();
        assert!(answer.give("late"));
        assert_eq!(pool.run_until(heard.taken()), "late");
    }
}
