//! From a file's type to the model's and back, field by field.
//!
//! Each file version has its own plain structs, so that a change of the file and a change of the model
//! can never alter one another unseen. Where both have a field of one name the conversion is mechanical:
//! [`mirrored`] writes it, and a field that only one side has does not compile.

use std::sync::Arc;

use crate::model::{
    BraceKind, ByFoot, CoopKind, DoorSide, FaultCause, FaultKind, GateKind, HazardKind, LabelSize, MowWay, PinKind,
    Point, ReadingKind, Rest, RunStatus, SoilTable, SoilWord, TapeLetter, WallKind, World,
};

/// The same statement in the types of the other side.
pub(crate) trait Mirror {
    /// The type on the other side.
    type Of;
    /// The same statement there.
    fn mirror(self) -> Self::Of;
}

macro_rules! same_on_both_sides {
    ($($type:ty),*) => {$(
        impl Mirror for $type {
            type Of = $type;
            fn mirror(self) -> Self::Of {
                self
            }
        }
    )*};
}

same_on_both_sides!(
    f64,
    u32,
    bool,
    String,
    Point,
    Rest,
    HazardKind,
    CoopKind,
    RunStatus,
    BraceKind,
    PinKind,
    GateKind,
    FaultCause,
    FaultKind,
    MowWay,
    ReadingKind,
    ByFoot,
    SoilTable,
    SoilWord,
    TapeLetter,
    WallKind,
    LabelSize,
    DoorSide,
    World,
    [u32; 2],
    crate::lead::Conductor,
    crate::today::Today
);

impl<T: Mirror> Mirror for Option<T> {
    type Of = Option<T::Of>;
    fn mirror(self) -> Self::Of {
        self.map(Mirror::mirror)
    }
}

impl<T: Mirror> Mirror for Vec<T> {
    type Of = Vec<T::Of>;
    fn mirror(self) -> Self::Of {
        self.into_iter().map(Mirror::mirror).collect()
    }
}

impl<T: Mirror> Mirror for Box<T> {
    type Of = Box<T::Of>;
    fn mirror(self) -> Self::Of {
        Box::new((*self).mirror())
    }
}

/// A struct of the file with the conversions to the model's struct of the same name.
impl<T: Mirror + Clone> Mirror for Arc<T> {
    type Of = Arc<T::Of>;
    fn mirror(self) -> Self::Of {
        Arc::new(Arc::unwrap_or_clone(self).mirror())
    }
}

macro_rules! mirrored {
    ($($(#[$meta:meta])* $name:ident { $($(#[$field_meta:meta])* $field:ident: $type:ty,)* })*) => {$(
        $(#[$meta])*
        #[derive(Clone, Debug, serde::Serialize, serde::Deserialize, schemars::JsonSchema)]
        pub(crate) struct $name {
            $($(#[$field_meta])* pub(crate) $field: $type,)*
            /// Keys that this version does not know; they are kept.
            #[serde(flatten)]
            pub(crate) rest: $crate::model::Rest,
        }
        impl $crate::file::mirror::Mirror for $name {
            type Of = $crate::model::$name;
            fn mirror(self) -> Self::Of {
                $crate::model::$name { $($field: self.$field.mirror(),)* rest: self.rest }
            }
        }
        impl $crate::file::mirror::Mirror for $crate::model::$name {
            type Of = $name;
            fn mirror(self) -> Self::Of {
                $name { $($field: self.$field.mirror(),)* rest: self.rest }
            }
        }
    )*};
}
pub(crate) use mirrored;
