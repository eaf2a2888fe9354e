//! What the store needs from the browser, small enough to be acted by a test.

use std::{
    cell::Cell,
    future::{Future, poll_fn},
    pin::pin,
    rc::Rc,
    task::Poll,
};

use super::{Keeping, Place, Slots, StoreProblem};

/// How far a save must have got before it counts as done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Durability {
    /// Handed to the operating system, which writes it within seconds; survives a crash of the
    /// browser but not always a power cut. For saves while typing.
    Relaxed,
    /// Written to the disk, and read back. For explicit saves and imports.
    Strict,
}

/// A database, a clock and a way to run work in the background.
pub trait Platform: 'static {
    /// An open database. It closes when dropped.
    type Connection: 'static;

    /// Opens the database. Sets `blocked` while another tab is in the way.
    ///
    /// May be dropped before it is done; a connection that arrives later is closed.
    fn open(
        &self,
        blocked: Rc<Cell<bool>>,
    ) -> impl Future<Output = Result<Self::Connection, StoreProblem>>;

    /// Reads both slots, as of one moment.
    fn read(
        &self,
        connection: &Self::Connection,
    ) -> impl Future<Output = Result<Slots, StoreProblem>>;

    /// Writes `text` where [`Slots::next_place`] says, reading and writing in one transaction, and
    /// tells that place when the transaction is complete.
    ///
    /// After an error, or when dropped before it is done, the slots are either untouched or
    /// written in full. The same holds for [`Platform::write_at`].
    fn write(
        &self,
        connection: &Self::Connection,
        text: &str,
        durability: Durability,
    ) -> impl Future<Output = Result<Place, StoreProblem>>;

    /// Writes `text` to `place` without waiting to read first, and when the transaction is
    /// complete tells what lay in the slots before.
    ///
    /// All of it is handed to the browser at once, so that it is done even if the page is gone in
    /// the next moment.
    fn write_at(
        &self,
        connection: &Self::Connection,
        place: Place,
        text: &str,
        durability: Durability,
    ) -> impl Future<Output = Result<Slots, StoreProblem>>;

    /// Asks the browser never to clear the store by itself. May take as long as the user does.
    fn ask_to_keep(&self) -> impl Future<Output = Keeping>;

    /// Is done after the given time.
    fn wait(&self, milliseconds: u32) -> impl Future<Output = ()>;

    /// Runs `work` in the background, from its first step to its end, whoever polled it before.
    fn spawn(&self, work: impl Future<Output = ()> + 'static);
}

/// The result of `work`, or `None` if `limit` is done first. Drops whichever lost.
pub(crate) async fn within<T>(
    limit: impl Future<Output = ()>,
    work: impl Future<Output = T>,
) -> Option<T> {
    let mut limit = pin!(limit);
    let mut work = pin!(work);
    poll_fn(|context| match work.as_mut().poll(context) {
        Poll::Ready(done) => Poll::Ready(Some(done)),
        Poll::Pending => limit.as_mut().poll(context).map(|()| None),
    })
    .await
}
