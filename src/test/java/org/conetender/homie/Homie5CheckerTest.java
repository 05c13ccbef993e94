package org.conetender.homie;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.homie.Homie5Checker.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A checker that finds nothing proves nothing: each rule is broken once, and must be named. */
class Homie5CheckerTest {

    private static final String ROOT = "homie/5/room/";
    private static final String CONE = "homie/5/room-a/";
    private static final String ROOT_TEXT = """
            {"homie":"5.0","version":3,"name":"Larkmoor","children":["room-a"],
             "nodes":{"air":{"properties":{"temperature":{"datatype":"float","unit":"°C"}}}}}""";
    private static final String CONE_TEXT = """
            {"homie":"5.0","version":7,"type":"cone","root":"room","extensions":[],
             "nodes":{"all":{"name":"Everything","properties":{
               "temp":{"datatype":"float","format":"0:40:0.5","unit":"°C"},
               "count":{"datatype":"integer","format":"0:"},
               "on":{"datatype":"boolean","format":"off,on","settable":true},
               "stage":{"datatype":"enum","format":"clean,filled"},
               "note":{"datatype":"string"},
               "ready":{"datatype":"datetime"},
               "left":{"datatype":"duration"},
               "lamp":{"datatype":"color","format":"rgb,xyz"},
               "fill":{"datatype":"json","settable":true,
                 "format":"{\\"type\\":\\"object\\",\\"required\\":[\\"litres\\"],\
               \\"properties\\":{\\"litres\\":{\\"type\\":\\"number\\"}}}"},
               "any":{"datatype":"json"},
               "bell":{"datatype":"boolean","retained":false}}}}}""";

    private static Map<String, String> tree() {
        Map<String, String> tree = new TreeMap<>();
        tree.put(ROOT + "$state", "ready");
        tree.put(ROOT + "$description", ROOT_TEXT);
        tree.put(ROOT + "air/temperature", "-1.5e1");
        tree.put(ROOT + "$alert/no-air-a", "Cone a: no air.");
        tree.put(CONE + "$state", "ready");
        tree.put(CONE + "$description", CONE_TEXT);
        Map.of("temp", "26.5", "count", "12", "on", "true", "stage", "filled", "note", "\u0000",
                        "ready", "2026-03-01T07:30:00+01:00", "left", "PT12H5M46S", "lamp", "rgb,0,12.5,255",
                        "fill", "{\"litres\":2}", "any", "[]")
                .forEach((property, payload) -> tree.put(CONE + "all/" + property, payload));
        tree.put(CONE + "all/on/$target", "false");
        return tree;
    }

    private static List<String> with(String topic, String payload) {
        Map<String, String> tree = tree();
        tree.put(topic, payload);
        return Homie5Checker.check(tree);
    }

    private static List<String> withCone(String from, String to) {
        assertThat(CONE_TEXT).contains(from);
        return with(CONE + "$description", CONE_TEXT.replace(from, to));
    }

    private static void names(List<String> found, String part) {
        assertThat(found).anySatisfy(line -> assertThat(line).contains(part));
    }

    @Test
    void aProperTreePasses() {
        assertThat(Homie5Checker.check(tree())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "temp | 26.7", "temp | 41", "temp | -1", "temp | NaN", "temp | 26,5", "temp | +26",
        "temp | -", "temp | 1e999",
        "count | 1.0", "count | -1", "count | 9223372036854775808", "count | - ",
        "on | TRUE", "on | on", "stage | Filled", "stage | clean,filled",
        "ready | tomorrow", "ready | 2026-13-01T00:00:00Z", "left | 12h", "left | PT",
        "left | P1D", "left | PT5",
        "lamp | rgb,1,2", "lamp | rgb,1,2,256", "lamp | hsv,1,2,3", "lamp | xyz,0.1,1.2", "lamp | rgb,1, 2,3",
        "fill | {}", "fill | {\"litres\":\"two\"}", "fill | 2", "fill | {\"litres\":2", "fill | {} {}",
        "any | \"text\"", "any | null", "on/$target | maybe"})
    void aPayloadThatDoesNotFitItsDescriptionIsNamed(String property, String payload) {
        List<String> found = with(CONE + "all/" + property, payload);
        assertThat(found).hasSize(1);
        assertThat(found.getFirst()).startsWith(CONE + "all/" + property + ": ");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "\"homie\":\"5.0\",    |                              | 'homie' is required",
        "\"5.0\"               | \"4.0\"                      | 'homie' is required",
        "\"5.0\"               | 5.0                          | 'homie' is required",
        "\"version\":7,        |                              | 'version' is required",
        "\"version\":7         | \"version\":\"7\"            | 'version' is required",
        "\"version\":7         | \"version\":7.5              | 'version' is required",
        "\"type\":\"cone\"     | \"type\":null                | 'type' of the device is not a string",
        "\"type\":\"cone\"     | \"typ\":\"cone\"             | unknown key 'typ'",
        "\"extensions\":[]     | \"extensions\":{}            | 'extensions' of the device is not an array",
        "\"extensions\":[]     | \"extensions\":[1]           | no string",
        "\"extensions\":[]     | \"extensions\":[\"mine\"]    | no reversed domain",
        "\"Everything\"        | 5                            | 'name' of node 'all'",
        "\"count\":{           | \"Count\":{                  | 'Count' in 'properties'",
        "\"all\":{             | \"a_ll\":{                   | 'a_ll' in 'nodes'",
        "\"integer\"           | \"int\"                      | no datatype",
        "\"datatype\":\"string\" |                            | no datatype",
        "0:40:0.5              | 0-40                         | not min:max:step",
        "0:40:0.5              | 40:0                         | minimum above its maximum",
        "0:40:0.5              | 0:40:0                       | step of",
        "0:40:0.5              | 0:40:                        | not of type float",
        "\"0:\"                | \"0.5:\"                     | not of type integer",
        "clean,filled          | clean,,filled                | empty value",
        "clean,filled          | clean,filled,clean           | a value twice",
        "\"enum\",\"format\":\"clean,filled\" | \"enum\"      | an enum needs a format",
        "\"format\":\"off,on\" | \"format\":\"off\"           | not two labels",
        "rgb,xyz               | rgb,cmyk                     | not a list of rgb",
        "\"datatype\":\"string\" | \"datatype\":\"string\",\"format\":\"x\" | a string has no format",
        "{\\\"type\\\":\\\"object\\\", | {\\\"type\\\":\\\"thing\\\", | the JSON schema is none",
        "\"format\":\"{\\\"type | \"format\":\"{\\\"type\\\"  | the JSON schema does not parse",
        "\"settable\":true,    | \"settable\":\"yes\",        | neither true nor false",
        "\"retained\":false    | \"retained\":true            | described but has no value",
        "\"unit\":\"°C\"       | \"unit\":\"\"                | empty unit",
        "\"homie\":\"5.0\",    | \"homie\":\"5.0\",\"homie\":\"5.0\", | does not parse"})
    void aDescriptionThatBreaksARuleIsNamed(String from, String to, String named) {
        names(withCone(from, to == null ? "" : to), named);
    }

    @Test
    void topicsOutsideTheConventionAreNamed() {
        names(with("homie/4/room/$state", "ready"), "is not below <domain>/5/<device>");
        names(with("homie/5/Room/$state", "ready"), "'Room' is no device id");
        names(with(CONE + "all/extra", "1"), "is not described");
        names(with(CONE + "all/temp/extra", "1"), "is not described");
        names(with(CONE + "$note", "1"), "is not described");
        names(with(CONE + "$alert/No Air", "x"), "is no $alert/<id>");
        names(with(CONE + "$alert", "x"), "is no $alert/<id>");
        names(with(CONE + "$log/info", "x"), "must not be retained");
        names(with(CONE + "all/on/set", "true"), "must not be retained");
        names(with(CONE + "all/bell", "true"), "described as not retained");
        names(with(CONE + "all/note", ""), "an empty payload is no value");
        names(with(CONE + "all/note", "\uFEFFx"), "byte order mark");
    }

    @Test
    void aDeviceWithoutStateDescriptionOrValueIsNamed() {
        names(with(CONE + "$state", "alert"), "'alert' is no state");
        names(with("homie/5/ghost/$state", "ready"), "ghost/$description: is missing");
        for (String topic : List.of("$state", "$description", "all/temp")) {
            Map<String, String> tree = tree();
            tree.remove(CONE + topic);
            names(Homie5Checker.check(tree), CONE + topic + ": is");
        }
        names(with(CONE + "$description", "[]"), "is not a JSON object");
        names(with(CONE + "$description", "{"), "does not parse");
    }

    @Test
    void aFamilyThatDoesNotAgreeIsNamed() {
        names(withCone("\"root\":\"room\",", ""), "its root is not 'room'");
        names(withCone("\"root\":\"room\",", "\"root\":\"house\","), "its root 'house' is no root device");
        names(withCone("\"root\":\"room\",", "\"root\":\"room\",\"parent\":\"b\","),
                "its parent is not 'room'");
        names(withCone("\"root\":\"room\",", "\"parent\":\"room\","), "has a parent but no root");
        names(with(ROOT + "$description", ROOT_TEXT.replace("[\"room-a\"]", "[]")),
                "does not name it as a child");
        names(with(ROOT + "$description", ROOT_TEXT.replace("[\"room-a\"]", "[\"room-a\",\"room-b\"]")),
                "child 'room-b' has no description");
        names(with(ROOT + "$description", ROOT_TEXT.replace("[\"room-a\"]", "[\"room-a\",\"room-a\"]")),
                "named twice");
        assertThat(withCone("\"root\":\"room\",", "\"root\":\"room\",\"parent\":\"room\",")).isEmpty();
    }

    @Test
    void aChangedDescriptionNeedsAHigherVersion() {
        Map<String, String> after = tree();
        assertThat(Homie5Checker.checkChange(tree(), after)).isEmpty();
        after.put(CONE + "$description", CONE_TEXT.replace("Everything", "All"));
        names(Homie5Checker.checkChange(tree(), after), "version was not raised");
        after.put(CONE + "$description",
                CONE_TEXT.replace("Everything", "All").replace("\"version\":7", "\"version\":8"));
        assertThat(Homie5Checker.checkChange(tree(), after)).isEmpty();
        after.put(CONE + "$description", CONE_TEXT.replace("\"version\":7", "\"version\":6"));
        names(Homie5Checker.checkChange(tree(), after), "the version went back");
    }

    @Test
    void aDescriptionMayChangeOnlyWhileItsDeviceIsNotReady() {
        String changed = CONE_TEXT.replace("\"version\":7", "\"version\":8");
        Message first = new Message(CONE + "$description", CONE_TEXT);
        Message second = new Message(CONE + "$description", changed);
        Message ready = new Message(CONE + "$state", "ready");
        Message init = new Message(CONE + "$state", "init");
        Message rootLost = new Message(ROOT + "$state", "lost");
        names(Homie5Checker.checkSequence(List.of(first, ready, second)),
                "changed while the device was ready");
        assertThat(Homie5Checker.checkSequence(List.of(first, ready, init, second, ready))).isEmpty();
        assertThat(Homie5Checker.checkSequence(List.of(first, ready, rootLost, second))).isEmpty();
        assertThat(Homie5Checker.checkSequence(List.of(first, ready, first))).isEmpty();
    }
}
