//! Pictures in use, each written once however often it is placed.

use std::{collections::BTreeMap, sync::Arc};

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, Stream, dictionary};

use super::{
    deflate,
    numbers::integer,
    picture::{Coding, Colors, Picture},
};
use crate::press::page::PictureKind;

#[derive(Default)]
pub struct Pictures {
    names: BTreeMap<Arc<[u8]>, String>,
    pictures: Vec<Picture>,
}

impl Pictures {
    /// The name under which pages ask for this picture.
    pub fn take(&mut self, bytes: &Arc<[u8]>, kind: PictureKind) -> String {
        if let Some(name) = self.names.get(bytes) {
            return name.clone();
        }
        let picture =
            Picture::read(bytes, kind).expect("a picture is read before it is given a place");
        self.pictures.push(picture);
        let name = format!("Picture{}", self.pictures.len());
        self.names.insert(Arc::clone(bytes), name.clone());
        name
    }

    /// Adds every picture; gives what the pages list under `XObject`.
    pub fn add(&self, objects: &mut Objects) -> Dictionary {
        let mut listed = Dictionary::new();
        for (picture, number) in self.pictures.iter().zip(1..) {
            listed.set(format!("Picture{number}"), add(picture, objects));
        }
        listed
    }
}

fn add(picture: &Picture, objects: &mut Objects) -> ObjectId {
    let (space, parts) = match picture.colors {
        Colors::Gray => ("DeviceGray", 1),
        Colors::Rgb => ("DeviceRGB", 3),
    };
    let mut image = frame(picture, space);
    if let Some(alpha) = &picture.alpha {
        let mask = objects.add_object(deflate::stream(frame(picture, "DeviceGray"), alpha));
        image.set("SMask", mask);
    }
    let stream = match &picture.coding {
        Coding::Jpeg(bytes) => {
            image.set("Filter", "DCTDecode");
            Stream::new(image, bytes.clone())
        }
        Coding::Png(bytes) => {
            image.set("Filter", "FlateDecode");
            image.set("DecodeParms", dictionary! {
                "Predictor" => 15, "Colors" => parts, "BitsPerComponent" => 8, "Columns" => integer(picture.width),
            });
            Stream::new(image, bytes.clone())
        }
        Coding::Plain(bytes) => deflate::stream(image, bytes),
    };
    objects.add_object(stream.with_compression(false))
}

fn frame(picture: &Picture, space: &str) -> Dictionary {
    dictionary! {
        "Type" => "XObject",
        "Subtype" => "Image",
        "Width" => integer(picture.width),
        "Height" => integer(picture.height),
        "ColorSpace" => Object::from(space),
        "BitsPerComponent" => 8,
    }
}
