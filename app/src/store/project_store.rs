//! Loads and saves the project, whatever the browser's database is up to.

use std::{
    cell::{Cell, RefCell},
    rc::Rc,
};

use super::{
    Browser, Durability, Generation, Loaded, Place, Platform, Slots, StoreProblem, platform::within,
};

/// The store in a real browser.
pub type BrowserStore = ProjectStore<Browser>;

/// How long another tab may hold up the opening of the database, in milliseconds.
pub(crate) const BLOCKED_LIMIT: u32 = 3_000;
/// How long the browser may take for any one answer, in milliseconds.
pub(crate) const ANSWER_LIMIT: u32 = 10_000;

/// The one stored project. Clones share the connection.
pub struct ProjectStore<P: Platform> {
    shared: Rc<Shared<P>>,
}

struct Shared<P: Platform> {
    platform: P,
    connection: RefCell<Option<Rc<P::Connection>>>,
    /// Where the next copy goes, as far as this tab knows.
    next_place: Cell<Option<Place>>,
}

impl ProjectStore<Browser> {
    /// The store of this page's origin. Opens nothing yet.
    pub fn in_browser() -> Self {
        Self::new(Browser::default())
    }
}

impl<P: Platform> ProjectStore<P> {
    /// A store on the given platform. Opens nothing yet.
    pub fn new(platform: P) -> Self {
        Self {
            shared: Rc::new(Shared {
                platform,
                connection: RefCell::new(None),
                next_place: Cell::new(None),
            }),
        }
    }

    /// The newest whole copy of the project, or `None` if none was ever saved.
    ///
    /// # Errors
    /// Any [`StoreProblem`] but `Full` and `ReadBackDiffers`.
    pub async fn load(&self) -> Result<Option<Loaded>, StoreProblem> {
        let slots = self.read().await?;
        self.shared.next_place.set(Some(slots.next_place()));
        slots.newest()
    }

    /// Saves `text`, and is done when the browser's transaction is complete; with
    /// [`Durability::Strict`] also read back and compared.
    ///
    /// After an error the store holds either the project of before or, when the trouble came
    /// after the writing, `text`; never a mixture.
    ///
    /// # Errors
    /// Any [`StoreProblem`] but `Damaged`.
    pub async fn save(
        &self,
        text: &str,
        durability: Durability,
    ) -> Result<Generation, StoreProblem> {
        let place = self
            .connected(async |connection| self.write(connection, text, durability).await)
            .await?;
        if durability == Durability::Strict && !self.read().await?.hold(place.generation, text) {
            return Err(StoreProblem::ReadBackDiffers);
        }
        self.shared.next_place.set(Some(place.next()));
        Ok(place.generation)
    }

    pub(crate) fn platform(&self) -> &P {
        &self.shared.platform
    }

    async fn read(&self) -> Result<Slots, StoreProblem> {
        self.connected(async |connection| self.platform().read(connection).await)
            .await
    }

    /// Writes straight to the next place where that is known, which is quick enough for a page on
    /// its way out, and with more care where it is not or where it turns out to have been wrong.
    async fn write(
        &self,
        connection: &P::Connection,
        text: &str,
        durability: Durability,
    ) -> Result<Place, StoreProblem> {
        // Taken: unless this succeeds, nothing is known any more.
        if let Some(place) = self.shared.next_place.take() {
            let before = self
                .platform()
                .write_at(connection, place, text, durability)
                .await?;
            if before.next_place() == place {
                return Ok(place);
            }
        }
        self.platform().write(connection, text, durability).await
    }

    /// Does `work` with an open connection; if the connection is lost, once more with a new one.
    async fn connected<T>(
        &self,
        work: impl AsyncFn(&P::Connection) -> Result<T, StoreProblem>,
    ) -> Result<T, StoreProblem> {
        match self.attempt(&work).await {
            Err(problem) if problem.is_cured_by_reopening() => self.attempt(&work).await,
            outcome => outcome,
        }
    }

    async fn attempt<T>(
        &self,
        work: &impl AsyncFn(&P::Connection) -> Result<T, StoreProblem>,
    ) -> Result<T, StoreProblem> {
        let connection = self.connection().await?;
        let outcome = within(self.platform().wait(ANSWER_LIMIT), work(&connection))
            .await
            .unwrap_or(Err(NO_ANSWER));
        if matches!(
            outcome,
            Err(StoreProblem::ConnectionLost | StoreProblem::NoAnswer { .. })
        ) {
            self.forget(&connection);
        }
        outcome
    }

    async fn connection(&self) -> Result<Rc<P::Connection>, StoreProblem> {
        if let Some(connection) = &*self.shared.connection.borrow() {
            return Ok(Rc::clone(connection));
        }
        let blocked = Rc::new(Cell::new(false));
        let platform = self.platform();
        let limit = async {
            platform.wait(BLOCKED_LIMIT).await;
            if !blocked.get() {
                platform.wait(ANSWER_LIMIT - BLOCKED_LIMIT).await;
            }
        };
        let connection = match within(limit, platform.open(Rc::clone(&blocked))).await {
            Some(opened) => Rc::new(opened?),
            None if blocked.get() => return Err(StoreProblem::Blocked),
            None => return Err(NO_ANSWER),
        };
        *self.shared.connection.borrow_mut() = Some(Rc::clone(&connection));
        Ok(connection)
    }

    /// Drops `connection`, unless another one has taken its place.
    fn forget(&self, connection: &Rc<P::Connection>) {
        let mut current = self.shared.connection.borrow_mut();
        if current
            .as_ref()
            .is_some_and(|current| Rc::ptr_eq(current, connection))
        {
            *current = None;
        }
    }
}

const NO_ANSWER: StoreProblem = StoreProblem::NoAnswer {
    seconds: ANSWER_LIMIT / 1_000,
};

impl<P: Platform> Clone for ProjectStore<P> {
    fn clone(&self) -> Self {
        Self {
            shared: Rc::clone(&self.shared),
        }
    }
}
