//! Pictures in use, each written once however often it is placed.

use std::{collections::BTreeMap, sync::Arc};

use lopdf::{Dictionary, Document as Objects, Stream, dictionary};

use super::{
    deflate,
    numbers::integer,
    picture::{Coding, Colors, Jpeg},
};

#[derive(Default)]
pub struct Pictures {
    names: BTreeMap<Arc<[u8]>, String>,
    pictures: Vec<Jpeg>,
}

impl Pictures {
    /// The name under which pages ask for this picture.
    pub fn take(&mut self, bytes: &Arc<[u8]>) -> String {
        if let Some(name) = self.names.get(bytes) {
            return name.clone();
        }
        let picture = Jpeg::read(bytes).expect("a picture is read before it is given a place");
        self.pictures.push(picture);
        let name = format!("Picture{}", self.pictures.len());
        self.names.insert(Arc::clone(bytes), name.clone());
        name
    }

    /// Adds every picture; gives what the pages list under `XObject`.
    pub fn add(&self, objects: &mut Objects) -> Dictionary {
        let mut listed = Dictionary::new();
        for (picture, number) in self.pictures.iter().zip(1..) {
            let stream = stream(picture).with_compression(false);
            listed.set(format!("Picture{number}"), objects.add_object(stream));
        }
        listed
    }
}

fn stream(picture: &Jpeg) -> Stream {
    let mut image = dictionary! {
        "Type" => "XObject",
        "Subtype" => "Image",
        "Width" => integer(picture.width),
        "Height" => integer(picture.height),
        "ColorSpace" => match picture.colors {
            Colors::Gray => "DeviceGray",
            Colors::Rgb => "DeviceRGB",
        },
        "BitsPerComponent" => 8,
    };
    match &picture.coding {
        Coding::Jpeg(bytes) => {
            image.set("Filter", "DCTDecode");
            Stream::new(image, bytes.clone())
        }
        Coding::Plain(bytes) => deflate::stream(image, bytes),
    }
}
