package org.conetender.core;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Message;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.guard.Finding;
import org.conetender.core.image.Request;

/**
 * What one tick decided, as data. Something else carries it out.
 *
 * @param next the state for the next tick
 * @param outputs every output's level, by id such as {@code a.heat}; true is energised
 * @param record what is to be made durable
 * @param words what is to be told
 * @param findings what the guards found, by cone id
 */
public record Result(State next, Map<String, Boolean> outputs, Record record, Words words,
                     Map<String, List<Finding>> findings) {

    /** @param transactions lists of facts, each all or none  @param minute once a minute */
    public record Record(List<List<Fact>> transactions, Optional<Minute> minute) {

        /** Whether nothing is to be made durable. */
        public boolean empty() {
            return transactions.isEmpty() && minute.isEmpty();
        }

        public Optional<Checkpoint> checkpoint() {
            return minute.map(Minute::checkpoint);
        }
    }

    /**
     * @param replies to requests
     * @param messages that call a person now, first or again
     * @param notes to those whose answer takes longer than a person likes to wait
     */
    public record Words(List<Reply> replies, List<Message> messages, List<Note> notes) {

        /** The alarms of which a person is told now. */
        public List<Alarm> alarms() {
            return messages.stream().flatMap(m -> m.alarms().stream()).toList();
        }
    }

    /** What can be said before the answer. @param sentence for the person; never that it is done */
    public record Note(Request request, String sentence) {}

    /** @param accepted whether it was accepted and is durable  @param sentence for the person */
    public record Reply(Request request, boolean accepted, String sentence) {}
}
