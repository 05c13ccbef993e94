package org.conetender.app.plot;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The words of a picture and where they stand. */
final class Lettering {

    private record Word(String text, double left, double top, double right, double bottom) {
        boolean over(Word o) {
            return left < o.right && o.left < right && top < o.bottom && o.top < bottom;
        }
    }

    private Lettering() {}

    /** Words that lie over others. */
    static List<String> over(Picture picture) throws Exception {
        List<Word> words = words(picture);
        List<String> over = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Word w = words.get(i);
            words.subList(0, i).stream().filter(w::over).forEach(o -> over.add(o.text() + " | " + w.text()));
        }
        return over;
    }

    /** All that is written on it. */
    static List<String> all(Picture picture) throws Exception {
        return words(picture).stream().map(Word::text).toList();
    }

    private static List<Word> words(Picture picture) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        picture.svg(out);
        NodeList nodes = DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new ByteArrayInputStream(out.toByteArray())).getElementsByTagName("text");
        List<Word> words = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            words.add(word((Element) nodes.item(i)));
        }
        return words;
    }

    private static Word word(Element t) {
        double size = Double.parseDouble(t.getAttribute("font-size"));
        double wide = new Pen.Type(size, t.hasAttribute("font-weight"), Pen.Side.AROUND)
                .width(t.getTextContent());
        double x = Double.parseDouble(t.getAttribute("x"));
        double y = Double.parseDouble(t.getAttribute("y"));
        double left = switch (t.getAttribute("text-anchor")) {
            case "start" -> x;
            case "middle" -> x - wide / 2;
            default -> x - wide;
        };
        // Capitals are three quarters of a line high, and little hangs below it.
        return new Word(t.getTextContent(), left, y - 0.75 * size, left + wide, y + 0.1 * size);
    }
}
